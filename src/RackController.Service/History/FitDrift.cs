using System.Collections.Immutable;
using RackController.Model;
using RackController.Plant;

namespace RackController.Service;

/// <summary>That the last floods of a rack differ from what its own fit foretells: a part of it has changed since it was timed.</summary>
public static class FitDrift
{
    /// <summary>A change of less is not told, in percent: several times what a fit is off by (common practice, no source).</summary>
    public const int LeastPercent = 15;

    /// <summary>Compares. Both sides are medians, as between months; a rack without a fit has no drift.</summary>
    /// <param name="site">The site.</param>
    /// <param name="rack">The rack.</param>
    /// <param name="floods">Its floods, oldest first.</param>
    public static ImmutableArray<FloodDrift> In(Site site, Rack rack, IEnumerable<FloodRecord> floods)
    {
        ArgumentNullException.ThrowIfNull(rack);
        var lately = rack.Measured is null ? [] : new FloodTimings(site, rack).Of(floods).TakeLast(FloodDrift.LeastFloods).ToList();
        if (lately.Count < FloodDrift.LeastFloods)
        {
            return [];
        }

        var marks = lately.SelectMany(flood => flood.Times.Zip(Foretold(rack, flood))).Where(time => time.Second is not null)
            .GroupBy(time => time.First.Mark).Where(mark => 2 * mark.Count() > lately.Count)
            .Select(mark => new FloodDrift(
                mark.Key.Passing == FloodPassing.Rising ? DriftOf.TierFill : DriftOf.TierDrain, mark.Key.TierNumber,
                FloodDrift.Median(mark.Select(time => time.Second!.Value)), FloodDrift.Median(mark.Select(time => time.First.AfterS)))
            {
                FittedOn = rack.Measured!.On,
            })
            .ToList();
        var found = marks.Where(drift => Math.Abs(drift.Percent) >= LeastPercent).ToList();
        return [.. OfAll(marks, found) is { } all ? found.Where(drift => drift.Of != DriftOf.TierFill).Prepend(all) : found];
    }

    private static ImmutableArray<double?> Foretold(Rack rack, TimedFlood flood) =>
        FloodTiming.Of(rack, flood.Run, [.. flood.Times.Select(time => time.Mark)]);

    // Where every tier fills slower, what they have in common is to be looked at: the pump and its screen.
    private static FloodDrift? OfAll(List<FloodDrift> marks, List<FloodDrift> found)
    {
        var fills = found.Where(drift => drift.Of == DriftOf.TierFill).ToList();
        var areAll = fills.Count > 1 && fills.Count == marks.Count(drift => drift.Of == DriftOf.TierFill);
        return areAll && fills.TrueForAll(drift => drift.Percent > 0)
            ? new FloodDrift(DriftOf.Fill, null, fills.Average(drift => drift.Before), fills.Average(drift => drift.Lately))
            {
                FittedOn = fills[0].FittedOn,
            }
            : null;
    }
}
