using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What came of fitting a rack to its times.</summary>
/// <param name="Tuned">The fit; null where it was refused.</param>
/// <param name="Refusal">Why it was refused, in one line with what to do; null where it was not.</param>
public sealed record TuneOutcome(TunedRack? Tuned, string? Refusal);

/// <summary>A rack that was fitted to its times.</summary>
/// <param name="Rack">The rack, with what was measured.</param>
/// <param name="Figures">Every figure that was fitted.</param>
/// <param name="Times">What was timed, with what was foretold before and after, bottom tier first.</param>
/// <param name="LeftOut">Which times were left out, and why, in sentences.</param>
/// <param name="Untold">What these times could not tell, and why, in sentences.</param>
/// <param name="OffPercent">How far the fit is off from a single time, in percent of it: the root of the mean square.</param>
public sealed record TunedRack(
    Rack Rack, ImmutableArray<(TunedFigure Figure, MeasuredFigure Value)> Figures, ImmutableArray<TunedTime> Times,
    ImmutableArray<string> LeftOut, ImmutableArray<string> Untold, double OffPercent);

/// <summary>One mark of one tier, in floods with the same tiers at rest.</summary>
/// <param name="Mark">The mark.</param>
/// <param name="Count">How many times it was timed.</param>
/// <param name="MeasuredS">The mean of its times, s.</param>
/// <param name="BeforeS">What was foretold by the rack file without what it says under <c>measured</c>, s; null for
/// never.</param>
/// <param name="AfterS">What is foretold by the fit, s; null for never.</param>
public sealed record TunedTime(FloodMark Mark, int Count, double MeasuredS, double? BeforeS, double? AfterS)
{
    /// <summary>Which tiers took no part in the floods that it was timed in.</summary>
    public TierSet Resting { get; init; }
}
