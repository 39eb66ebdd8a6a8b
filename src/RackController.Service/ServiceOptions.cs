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

    /// <summary>What a run with these options is driven by, for its record.</summary>
    internal RunFacts FactsFor(Site site) => new(
        RackFile, RackFileText,
        typeof(ServiceOptions).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "",
        TzdbDateTimeZoneSource.Default.TzdbVersion, PartNames.Of(site));
}

/// <summary>How a run ended.</summary>
/// <param name="Defect">What ended it, in one line; null when somebody asked it to end.</param>
/// <param name="SafeStateFault">Why a load may not be in its safe state; null when all are.</param>
public sealed record ServiceEnding(string? Defect, string? SafeStateFault);
