using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>One flood of a rack, as the journal tells it.</summary>
/// <param name="At">When the pump began to fill.</param>
/// <param name="Why">Why it was due, as a phrase that can follow "because"; empty where the journal does not go back so far.</param>
/// <param name="Fill">How long the fill took; null while it goes on, and where it was cut short.</param>
/// <param name="Soak">How long the water was held; null while it is, and where that was cut short.</param>
/// <param name="CutShort">What cut it short; null when nothing did.</param>
/// <param name="VolumeL">How far the reservoir fell, litres, by its level sensor, once a minute; null where none tells.</param>
/// <param name="Tiers">What the tiers' own sensors tell, bottom first.</param>
public sealed record FloodRecord(
    Instant At, string Why, Duration? Fill, Duration? Soak, string? CutShort, double? VolumeL, ImmutableArray<TierFlood> Tiers)
{
    /// <summary>Depth of the reservoir just before it, mm, by its level sensor; null where none tells.</summary>
    public double? ReservoirMm { get; init; }

    /// <summary>The tiers whose valves stayed shut from the pump's start to its stop; null where a valve was switched meanwhile, or the
    /// journal does not tell. A tier without a valve is never one of them.</summary>
    public TierSet? Resting { get; init; } = TierSet.None;
}

/// <summary>One flood of one tier.</summary>
/// <param name="Number">The tier, 1 at the bottom.</param>
/// <param name="FullAfter">How long after the pump began its full float was reached; null where none tells.</param>
/// <param name="EmptyAfter">How long after the pump ended its full float was left; null where none tells.</param>
public sealed record TierFlood(int Number, Duration? FullAfter, Duration? EmptyAfter);
