using RackController.Model;

namespace RackController.Control;

/// <summary>What a person is told when a row acts, so that nobody stands before it at night without a next step.</summary>
/// <param name="Priority">How urgent.</param>
/// <param name="Consequence">What follows if nobody acts.</param>
/// <param name="Action">What to do.</param>
/// <param name="RespondWithin">How soon, in words.</param>
public sealed record AlarmText(AlarmPriority Priority, string Consequence, string Action, string RespondWithin);

/// <summary>What a row does to its loads.</summary>
public enum RowEffect
{
    /// <summary>They may not be on.</summary>
    ForbidOn,

    /// <summary>They take their safe state.</summary>
    SafeState,

    /// <summary>The contactor of a circuit opens, and nothing on it is powered.</summary>
    CutCircuit,

    /// <summary>Loads of low priority wait until what is left fits.</summary>
    Shed,

    /// <summary>Nothing is switched; a person is told.</summary>
    Tell,
}

/// <summary>The ways in which a row comes back after its cause has acted. Tests walk through all its states and hold it to exactly
/// these.</summary>
[Flags]
public enum WaysBack
{
    /// <summary>Once its cause is gone and its times are over.</summary>
    ByItself = 1,

    /// <summary>When somebody acknowledges its alarm.</summary>
    Acknowledgement = 2,

    /// <summary>When somebody resets its latch; while that has caught there is no other way.</summary>
    Reset = 4,
}

/// <summary>
/// One row of the cause-and-effect table. The table is data and the one source: the controller is built from it, the
/// hardware notes and the page show it, and campaigns prove it row by row.
/// </summary>
/// <param name="Id">Names the row for good; a part of alarm keys.</param>
/// <param name="Cause">What sets it off.</param>
/// <param name="Needs">Which sensors it needs; <c>nothing</c> when it always works.</param>
/// <param name="Effect">What it does.</param>
/// <param name="EffectWords">What it does, to what, in words.</param>
/// <param name="ComesBack">How things return.</param>
/// <param name="Alarm">What a person is told; null for a row that acts in the ordinary course of things.</param>
public sealed record CauseAndEffectRow(
    string Id, string Cause, string Needs, RowEffect Effect, string EffectWords, string ComesBack, AlarmText? Alarm)
{
    /// <summary>Whether it acts in the ordinary course of every day, so that its coming and going is no event.</summary>
    public bool IsOrdinary { get; init; }

    /// <summary>The ways that <see cref="ComesBack"/> puts into words.</summary>
    public WaysBack Returns { get; init; } = WaysBack.ByItself;

    /// <summary>What it can stand at. A place of that kind without an instance lacks what the row needs.</summary>
    public RowScope Scope { get; init; } = RowScope.Rack;

    /// <summary>Builds the instances of this row that a site has the sensors for.</summary>
    internal Func<CauseAndEffectRow, InterlockSite, IEnumerable<Interlock>> Instances { get; init; } = (_, _) => [];
}
