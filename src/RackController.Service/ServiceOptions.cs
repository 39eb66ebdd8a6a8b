using System.Reflection;
using NodaTime.TimeZones;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>How to run a site.</summary>
public sealed record ServiceOptions
{
    /// <summary>The rack file, for the log.</summary>
    public required string RackFile { get; init; }

    /// <summary>What the rack file says, for the record.</summary>
    public required string RackFileText { get; init; }

    /// <summary>Where journal, lock and log are kept.</summary>
    public required StateFolder Folder { get; init; }

    /// <summary>How many times faster than real time: 1 to 1000. More than 1 with simulated racks only.</summary>
    public double Speed { get; init; } = 1;

    /// <summary>A screen to show while running, until its token ends it; null for a log on the console instead.</summary>
    public Func<IRunningRack, CancellationToken, Task>? Screen { get; init; }

    /// <summary>Serves a page beside the scan; null for none. When it fails that is an alarm, and it is tried again.</summary>
    public PageServing? Page { get; init; }

    /// <summary>What a run with these options is driven by, for its record.</summary>
    internal RunFacts FactsFor(Site site) => new(
        RackFile, RackFileText,
        typeof(ServiceOptions).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "",
        TzdbDateTimeZoneSource.Default.TzdbVersion, PartNames.Of(site));
}

/// <summary>Serves a page of a running rack until the end is asked for.</summary>
/// <param name="rack">The rack.</param>
/// <param name="served">Called once the page can be reached.</param>
/// <param name="end">Asks for the end.</param>
public delegate Task PageServing(IServedRack rack, Action served, CancellationToken end);

/// <summary>How a run ended.</summary>
/// <param name="Defect">What ended it, in one line; null when somebody asked it to end.</param>
/// <param name="SafeStateFault">Why a load may not be in its safe state; null when all are.</param>
/// <param name="StartAgain">Whether another run should take over, with what the rack file says now.</param>
public sealed record ServiceEnding(string? Defect, string? SafeStateFault, bool StartAgain = false);
