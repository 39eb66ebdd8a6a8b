using System.Collections.Immutable;
using NodaTime;

namespace RackController.Model;

/// <summary>Which way the water of a tray passes a mark in a flood.</summary>
public enum FloodPassing
{
    /// <summary>It rises past it: timed from the pump's start.</summary>
    Rising,

    /// <summary>It falls past it: timed from the pump's stop.</summary>
    Falling,
}

/// <summary>What can be timed at one tray in a flood.</summary>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
/// <param name="Passing">Which way.</param>
/// <param name="DepthMm">Depth of the mark over the tray's floor, mm.</param>
public sealed record FloodMark(int TierNumber, FloodPassing Passing, double DepthMm);

/// <summary>How a flood was run.</summary>
/// <param name="PumpRan">How long the pump ran: 1 s to 4 h.</param>
/// <param name="ReservoirMm">Depth of the reservoir as the pump began, mm.</param>
public sealed record FloodRun(Duration PumpRan, double ReservoirMm)
{
    /// <summary>The tiers that took no part: their valves stayed shut. One without a valve of its own is flooded all the same.</summary>
    public TierSet Resting { get; init; }
}

/// <summary>A flood that was timed.</summary>
/// <param name="Name">What a person would call it: <c>the flood of 3 May, 07:00</c>.</param>
/// <param name="Run">How it was run.</param>
/// <param name="Times">When marks were passed.</param>
public sealed record TimedFlood(string Name, FloodRun Run, ImmutableArray<TimedPassing> Times)
{
    /// <summary>When the pump began, by the wall clock; null where nobody wrote it down.</summary>
    public Instant? At { get; init; }
}

/// <summary>When a mark was passed.</summary>
/// <param name="Mark">The mark.</param>
/// <param name="AfterS">When, s: above 0.</param>
public sealed record TimedPassing(FloodMark Mark, double AfterS);
