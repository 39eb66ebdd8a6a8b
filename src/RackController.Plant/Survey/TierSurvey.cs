using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>What one flood does to one tier. A tier that takes no part has neither flow nor depth.</summary>
public sealed record TierSurvey
{
    /// <summary>The tier.</summary>
    public required Tier Tier { get; init; }

    /// <summary>Whether a flood reaches it: in use, or out of use without a valve that keeps the water away.</summary>
    public required bool TakesPart { get; init; }

    /// <summary>What it gets as a flood begins, the reservoir at its normal volume, L/min.</summary>
    public required double FlowLpm { get; init; }

    /// <summary>What it gets with the reservoir at its lowest working level, L/min.</summary>
    public required double FlowAtLowestLpm { get; init; }

    /// <summary>What its weep takes when it counts as filled, and so the least that holds it so, L/min.</summary>
    public required double HoldsFullLpm { get; init; }

    /// <summary>From the pump's start until it counts as filled, if need be with the pump left running; null if it never
    /// does.</summary>
    public required Duration? Filled { get; init; }

    /// <summary>Depth at which its water stands when the pump is left running from a reservoir that stays full, mm.</summary>
    public required double SettledMm { get; init; }

    /// <summary>What weep and standpipe carry away at that depth into what the drain stack has left for them, L/min.</summary>
    public required double CarriedLpm { get; init; }

    /// <summary>Whether the drain stack then takes less than they would carry.</summary>
    public required bool StackHoldsBack { get; init; }

    /// <summary>From the pump's stop until it counts as drained; null if it never does, zero if it held no more.</summary>
    public required Duration? Drained { get; init; }

    /// <summary>Height of its high float, mm; null without one.</summary>
    public required double? HighFloatMm { get; init; }

    /// <summary>Whether it is in use and the pump cannot fill it, or could not hold it filled from a low reservoir.</summary>
    public bool IsStarved => Tier.InUse && (SettledMm < Tier.Tray.FilledMm || FlowAtLowestLpm < HoldsFullLpm);

    /// <summary>Whether water would reach its high float or its rim.</summary>
    public bool IsOverwhelmed => TakesPart && SettledMm >= Math.Min(HighFloatMm ?? double.MaxValue, Tier.Tray.RimDepthMm);
}
