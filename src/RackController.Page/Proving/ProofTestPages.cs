using System.Collections.Immutable;
using RackController.Control;

namespace RackController.Page;

/// <summary>The page of proof tests.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="MayAct">Whether whoever looks may begin one and answer.</param>
/// <param name="Running">The one that is under way; null while none is.</param>
/// <param name="Lately">What came of the last ones, newest first.</param>
/// <param name="Tests">All of them, overdue ones first.</param>
public sealed record ProofTestPage(
    FrameView Frame, bool MayAct, RunningTestView? Running, ImmutableArray<DueView> Lately, ImmutableArray<ProofTestView> Tests);

/// <summary>The test that is under way.</summary>
/// <param name="Progress">Where it is.</param>
/// <param name="Until">When its step, or the wait, is over; local.</param>
/// <param name="FloodAddress">Where a flood of its rack is asked for; null where the step needs none.</param>
public sealed record RunningTestView(ProofTestProgress Progress, string Until, string? FloodAddress)
{
    /// <summary>Whether somebody must say what was seen.</summary>
    public bool AsksNow => Progress is { AsksPerson: true, WaitsForRack: false };
}

/// <summary>One test in the list.</summary>
/// <param name="Item">The sensor or load.</param>
/// <param name="Kind">What sort of test.</param>
/// <param name="Every">How often it is due.</param>
/// <param name="Stands">When it was last passed and is due, or that it failed.</param>
/// <param name="IsOdd">Whether it is overdue, or failed.</param>
public sealed record ProofTestView(string Item, string Kind, string Every, string Stands, bool IsOdd);
