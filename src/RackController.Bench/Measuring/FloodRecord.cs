using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>One flood of a rack, as the water saw it.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="At">The true time at which the fill began.</param>
/// <param name="Elapsed">The same, since the run began.</param>
/// <param name="PumpRan">How long the pump was powered.</param>
/// <param name="Trays">What each tray did, bottom first.</param>
public sealed record FloodRecord(
    RackId Rack, Instant At, Duration Elapsed, Duration PumpRan, ImmutableArray<TrayFlood> Trays);

/// <summary>What one flood did to one tray.</summary>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
/// <param name="PeakMm">Greatest depth, mm.</param>
/// <param name="Filled">From the start of the fill until the water stood within a tenth of the standpipe's height; null
/// when it never did.</param>
/// <param name="Drained">From the pump's stop until less than 3 mm were left; null when more stayed until the next flood
/// or the end of the run.</param>
public readonly record struct TrayFlood(int TierNumber, double PeakMm, Duration? Filled, Duration? Drained);
