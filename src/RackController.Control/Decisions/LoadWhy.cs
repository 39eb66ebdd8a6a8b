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
