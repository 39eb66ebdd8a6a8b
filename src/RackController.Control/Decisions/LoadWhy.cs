using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Why a load is on or off, step by step, in words. The same words serve live status, <c>why</c> and the page.</summary>
/// <param name="Load">The load.</param>
/// <param name="State">What it is told.</param>
/// <param name="Demand">What schedule, flood cycle or person would like, and why.</param>
/// <param name="Interlocks">What each objecting interlock says; empty when none objects.</param>
/// <param name="Admission">Whether the circuit lets it on now, and why.</param>
/// <param name="Summary">All of it in one short phrase.</param>
public sealed record LoadWhy(
    LoadId Load, SwitchState State, string Demand, ImmutableArray<string> Interlocks, string Admission, string Summary);

/// <summary>Something that the schedule will do next, if nothing gets in its way.</summary>
/// <param name="Subject">The load or rack.</param>
/// <param name="What">What will happen: <c>on</c>, <c>off</c>, <c>flood</c>.</param>
/// <param name="At">When, by the wall clock.</param>
public sealed record DueNext(string Subject, string What, NodaTime.Instant At);

/// <summary>Where a rack's flood cycle is.</summary>
public enum FloodPhase
{
    /// <summary>No flood is under way or due.</summary>
    Idle,

    /// <summary>A flood is due, but the pump may not start yet.</summary>
    Waiting,

    /// <summary>The pump fills the trays.</summary>
    Filling,

    /// <summary>The water is held at depth.</summary>
    Soaking,

    /// <summary>The pump is off and the trays empty.</summary>
    Draining,
}
