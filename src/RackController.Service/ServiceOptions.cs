namespace RackController.Service;

/// <summary>How to run a site.</summary>
public sealed record ServiceOptions
{
    /// <summary>The rack file, for the log.</summary>
    public required string RackFile { get; init; }

    /// <summary>Where journal, lock and log are kept.</summary>
    public required StateFolder Folder { get; init; }

    /// <summary>How many times faster than real time: 1 to 1000. More than 1 with simulated racks only.</summary>
    public double Speed { get; init; } = 1;

    /// <summary>A screen to show while running, until its token ends it; null for a log on the console instead.</summary>
    public Func<IRunningRack, CancellationToken, Task>? Screen { get; init; }
}

/// <summary>How a run ended.</summary>
/// <param name="Defect">What ended it, in one line; null when somebody asked it to end.</param>
/// <param name="SafeStateFault">Why a load may not be in its safe state; null when all are.</param>
public sealed record ServiceEnding(string? Defect, string? SafeStateFault);
