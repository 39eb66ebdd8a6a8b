using System.Globalization;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Live;

/// <summary>
/// The whole site on one screen: alarms first, then every load and why, every reading, what is due, and what happened last.
/// It is made to fit 80 columns and 24 rows for one rack of four tiers, and shows more where there is more room.
/// </summary>
/// <param name="Site">The site.</param>
/// <param name="Speed">How many times faster than real time it runs.</param>
internal sealed record StatusPage(Site Site, double Speed)
{
    /// <summary>Lays out the page.</summary>
    /// <param name="status">What to show.</param>
    /// <param name="chosen">The rack that keys act on, and that is shown when not all fit.</param>
    /// <param name="legend">The keys, or a question to the person; empty when there is no keyboard.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <returns>As many lines as fit.</returns>
    public IReadOnlyList<StyledLine> Lines(SiteStatus status, RackId chosen, StyledLine legend, int width, int height)
    {
        var loads = LoadLines.Of(Site, status, chosen: null, width);
        var readings = ReadingLines.Of(Site, status, chosen: null, width);
        const int rowsBesideTables = 7;
        if (loads.Count + readings.Count + rowsBesideTables > height && Site.Racks.Length > 1)
        {
            loads = LoadLines.Of(Site, status, chosen, width);
            readings = ReadingLines.Of(Site, status, chosen, width);
        }

        var lines = new List<StyledLine> { Title(status, width), Health(status, chosen, width) };
        var room = height - lines.Count - loads.Count - readings.Count - 1;
        lines.AddRange(AlarmLines.Of(status, width, Math.Max(1, room - 3)));
        room = height - lines.Count - loads.Count - readings.Count - 1;
        var isRoomy = room >= 8;
        AddSection(lines, loads, isRoomy);
        AddSection(lines, readings, isRoomy);
        room = height - lines.Count - 1;
        AddSection(lines, DueLines.Due(Site, status, width, Math.Clamp((room / 2) - 1, 1, 6)), isRoomy);
        room = height - lines.Count - 1;
        AddSection(lines, DueLines.Recent(Site, status, width, room - (isRoomy ? 1 : 0)), isRoomy);
        return [.. lines.Take(height - 1), legend];
    }

    private static void AddSection(List<StyledLine> lines, List<StyledLine> section, bool isRoomy)
    {
        if (isRoomy && section.Count > 0)
        {
            lines.Add(new StyledLine());
        }

        lines.AddRange(section);
    }

    private StyledLine Title(SiteStatus status, int width)
    {
        var local = status.At.Wall.InZone(Site.Zone);
        var clock = local.ToString("ddd d MMM yyyy HH:mm:ss", CultureInfo.InvariantCulture);
        var how = Site.Io is SimulatedIo ? "simulated" : "driving real loads";
        var speed = Speed > 1 ? string.Create(CultureInfo.InvariantCulture, $" at {Speed:0.#} times real time") : "";
        var rest = how.Length + speed.Length + clock.Length + 4;

        // That all is well with the clock may give way to the name of the site; that it is not may not.
        const string trusted = " (clock trusted)";
        var trust = !status.At.WallTrusted ? " (! clock not trusted)" : Site.Name.Length + trusted.Length + rest <= width ? trusted : "";
        rest += trust.Length;
        return new StyledLine()
            .AddColumn(Site.Name, width - rest, Tone.Strong)
            .Add($"  {how}{speed}  ", Tone.Quiet)
            .Add(clock)
            .Add(trust, status.At.WallTrusted ? Tone.Quiet : Tone.Caution);
    }

    private StyledLine Health(SiteStatus status, RackId chosen, int width)
    {
        var line = new StyledLine();
        foreach (var rack in Site.Racks)
        {
            var isChosen = Site.Racks.Length > 1 && rack.Id == chosen;
            line.Add(isChosen ? $"[{rack.Name}]" : rack.Name, isChosen ? Tone.Strong : Tone.Plain)
                .Add($" {status.Floods[rack.Id.Index].InWords()}   ", Tone.Quiet);
        }

        if (status.Health.Fault is { } fault)
        {
            return line.AddRest($"! {fault}", width, Tone.Urgent);
        }

        var health = status.Health;
        return line.AddRest(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{health.Scans} scans, {health.Slips} late, at worst by {health.WorstLateness.TotalMilliseconds:0.0} ms"),
            width, Tone.Quiet);
    }
}
