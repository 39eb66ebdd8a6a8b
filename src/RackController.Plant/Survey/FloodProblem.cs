namespace RackController.Plant;

/// <summary>What can be wrong with a flood, in the order in which it is put right: each may hide or cause those after it.</summary>
public enum FloodProblem
{
    /// <summary>A tier gets no water, or too little to be filled.</summary>
    TierStarved,

    /// <summary>A tray gets more than weep, standpipe and its share of the drain stack carry away.</summary>
    TrayOverwhelmed,

    /// <summary>The reservoir falls to its low float or to the pump's intake.</summary>
    ReservoirTooLow,

    /// <summary>A tray is not yet filled when the fill ends.</summary>
    FilledTooLate,

    /// <summary>A tray is not drained when its time to drain is over.</summary>
    DrainedTooLate,
}

/// <summary>One thing that is wrong with a flood.</summary>
/// <param name="Problem">What.</param>
/// <param name="TierNumber">On which tier; null for the whole rack.</param>
public sealed record FloodFinding(FloodProblem Problem, int? TierNumber);
