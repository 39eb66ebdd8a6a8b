using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Why a load would like to be on or off; the words for each are in one place.</summary>
internal enum DemandCause
{
    /// <summary>The tier is within its photoperiod.</summary>
    Lit,

    /// <summary>The tier is in its dark period.</summary>
    Dark,

    /// <summary>The tier is out of use.</summary>
    TierOutOfUse,

    /// <summary>The load is planned to run always.</summary>
    Always,

    /// <summary>The on part of an on/off cycle.</summary>
    CycleOn,

    /// <summary>The off part of an on/off cycle.</summary>
    CycleOff,

    /// <summary>A reading rose above where the load comes on.</summary>
    ReadingHigh,

    /// <summary>A reading fell below where the load goes off.</summary>
    ReadingLow,

    /// <summary>The reading that decides is unknown; the load takes its safe state.</summary>
    ReadingUnknown,

    /// <summary>No flood is due.</summary>
    NoFlood,

    /// <summary>A flood is due and waits for the pump.</summary>
    FloodWaiting,

    /// <summary>A flood fills the trays.</summary>
    FloodFilling,

    /// <summary>A flood holds its depth.</summary>
    FloodSoaking,

    /// <summary>A flood drains.</summary>
    FloodDraining,

    /// <summary>A person stopped the rack; the load takes its safe state.</summary>
    Stopped,

    /// <summary>A proof test needs the load so.</summary>
    ProofTest,
}

/// <summary>What a load would like to be before anyone objects.</summary>
/// <param name="State">On or off.</param>
/// <param name="Cause">Why.</param>
/// <param name="Until">Until when by the wall clock, if the plan knows; the minimum instant when it does not.</param>
internal readonly record struct Demand(SwitchState State, DemandCause Cause, Instant Until)
{
    public static Demand On(DemandCause cause, Instant? until = null) =>
        new(SwitchState.On, cause, until ?? Instant.MinValue);

    public static Demand Off(DemandCause cause, Instant? until = null) =>
        new(SwitchState.Off, cause, until ?? Instant.MinValue);
}
