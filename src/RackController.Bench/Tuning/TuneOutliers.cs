using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Times that something else than the rack decided: a hand in the tray, a float that stuck, a slip of the stopwatch. Floods are
/// held against those with the same tiers at rest, for the others share the pump.</summary>
internal static class TuneOutliers
{
    /// <summary>Times that differ by less are of one kind, whatever their scatter (common practice, no source).</summary>
    private const double AlwaysAlikeShare = 0.2;

    /// <summary>So many typical deviations from the middle are no scatter (common practice, no source).</summary>
    private const double MostDeviations = 6;

    private const int LeastToTell = 3;

    /// <summary>Leaves them out.</summary>
    /// <param name="floods">The floods.</param>
    /// <param name="leftOut">Each in a sentence.</param>
    /// <returns>The floods without them.</returns>
    public static ImmutableArray<TimedFlood> LeaveOut(IReadOnlyList<TimedFlood> floods, out ImmutableArray<string> leftOut)
    {
        var middles = floods.SelectMany(flood => flood.Times.Select(time => (Kind: (flood.Run.Resting, time.Mark), time.AfterS)))
            .GroupBy(time => time.Kind)
            .Where(alike => alike.Count() >= LeastToTell)
            .ToDictionary(alike => alike.Key, alike => Middle.Of([.. alike.Select(time => time.AfterS)]));
        var words = ImmutableArray.CreateBuilder<string>();
        var kept = ImmutableArray.CreateBuilder<TimedFlood>();
        foreach (var flood in floods)
        {
            var resting = flood.Run.Resting;
            var odd = flood.Times
                .Where(time => middles.TryGetValue((resting, time.Mark), out var middle) && middle.IsOdd(time.AfterS)).ToList();
            words.AddRange(odd.Select(time => Words(flood, time, middles[(resting, time.Mark)])));
            kept.Add(flood with { Times = [.. flood.Times.Except(odd)] });
        }

        leftOut = words.ToImmutable();
        return kept.ToImmutable();
    }

    private static string Words(TimedFlood flood, TimedPassing time, Middle middle) =>
        $"{flood.Name}: tier {time.Mark.TierNumber} took {Spans.Words(Duration.FromSeconds(time.AfterS))} to "
        + $"{(time.Mark.Passing == FloodPassing.Rising ? "fill" : "drain")}, where {Spans.Words(Duration.FromSeconds(middle.Seconds))} "
        + "is usual: left out";

    private sealed record Middle(double Seconds, double DeviationS)
    {
        public static Middle Of(double[] times)
        {
            var middle = Median(times);
            return new Middle(middle, Median([.. times.Select(time => Math.Abs(time - middle))]));
        }

        public bool IsOdd(double seconds) =>
            Math.Abs(seconds - Seconds) > Math.Max(AlwaysAlikeShare * Seconds, MostDeviations * DeviationS);

        private static double Median(double[] values)
        {
            var sorted = values.Order().ToList();
            return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
        }
    }
}
