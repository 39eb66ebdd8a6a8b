using System.Globalization;
using NodaTime;
using NodaTime.TimeZones;
using RackController.Model;
using Serilog;

namespace RackController.Service;

/// <summary>What the log and the alarms say about a start: what was found, chosen and put aside.</summary>
internal static class StartLines
{
    /// <summary>Writes the log's first line, once the outputs are claimed: whoever asks later how long a rack was unattended finds when
    /// that ended.</summary>
    public static void WriteClaimed(ILogger log) => log.Information("outputs claimed, every load in its safe state");

    /// <summary>Writes who drives what, from where.</summary>
    public static void Write(ILogger log, Site site, ServiceOptions options, JournalOpening opening, OpenRack rack)
    {
        log.Information(
            "{Site:l} from {File:l}: {Racks} {Frames:l}, {Loads} loads, {Sensors} sensors, {Io:l}{Speed:l}",
            site.Name, options.RackFile, site.Racks.Length, site.Racks.Length == 1 ? "rack" : "racks", site.Loads.Length,
            site.Sensors.Length, rack.Name,
            options.Speed > 1 ? string.Create(CultureInfo.InvariantCulture, $", at {options.Speed} times real time") : "");
        foreach (var line in rack.Describe())
        {
            log.Information("{Line:l}", line);
        }

        log.Information(
            "state in {Folder:l}; {Memory:l}", options.Folder.Path,
            opening.Memory switch
            {
                null => "no interlock memory from before",
                { Items.Count: 0 } => "interlock memory from before, if there was any, cannot be read",
                var memory => $"interlock memory of {memory.SavedAt} taken up again",
            });
        WarnOfOldZones(log, site);
        if (Environment.Version is { Major: 10, Minor: 0, Build: <= 2 } version)
        {
            log.Warning(
                "this .NET runtime ({Version}) may freeze timers when the clock is set back; the scan goes on, use 10.0.3 or later",
                version);
        }
    }

    /// <summary>Raises the alarms that a start already knows of.</summary>
    public static void RaiseWhatWasFound(ControllerAlarms alarms, JournalOpening opening, string? lockTrouble)
    {
        if (opening.SetAside is { } setAside)
        {
            alarms.Raise(ControllerTrouble.JournalSetAside, setAside);
        }

        if (opening.Unusable is { } unusable)
        {
            alarms.Raise(ControllerTrouble.JournalUnwritable, $"the journal cannot be written: {unusable}");
        }

        if (lockTrouble is not null)
        {
            alarms.Raise(ControllerTrouble.NotAlone, lockTrouble);
        }
    }

    /// <summary>Governments change the clock; a time zone database of a year ago may not know.</summary>
    private static void WarnOfOldZones(ILogger log, Site site)
    {
        var version = TzdbDateTimeZoneSource.Default.TzdbVersion;
        log.Information("times are those of {Zone:l}, by version {Version:l} of the IANA time zone database", site.Zone.Id, version);
        var thisYear = SystemClock.Instance.GetCurrentInstant().InUtc().Year;
        if (version.Length >= 4 && int.TryParse(version[..4], out var year) && thisYear - year > 1)
        {
            log.Warning("the time zone database is of {Year}: clock changes decided since are not known; update the program", year);
        }
    }
}
