using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>
/// All times that a fit goes by, and what the simulated rack says of each. A time counts by how well it can be known: floats and
/// stopwatches are a second off or so, and no two floods are alike to better than a hundredth (common practice, no source).
/// </summary>
internal sealed class TimedFloods
{
    /// <summary>What stands for a time that the simulated rack never reaches: too far off to be where the best fit is.</summary>
    private const double NeverS = 1e5;

    private const double OffS = 1;
    private const double OffShare = 0.01;
    private const double SameLevelMm = 10;

    private readonly Rack rack;
    private readonly Action? between;
    private readonly ImmutableArray<Run> runs;

    /// <summary>Gathers times.</summary>
    /// <param name="rack">The rack, as written.</param>
    /// <param name="floods">The floods.</param>
    /// <param name="between">Called between simulations; null for nobody.</param>
    public TimedFloods(Rack rack, IEnumerable<TimedFlood> floods, Action? between = null)
    {
        this.rack = rack;
        this.between = between;

        // Floods that ran alike are simulated once.
        runs =
        [
            .. floods.GroupBy(flood => Rounded(flood.Run)).Select(alike => new Run(
                alike.Key, [.. alike.SelectMany(flood => flood.Times).Select(time => time.Mark).Distinct()],
                [.. alike.SelectMany(flood => flood.Times)])),
        ];
        Times = [.. runs.SelectMany(run => run.Times)];
        Resting = [.. runs.SelectMany(run => Enumerable.Repeat(run.As.Resting, run.Times.Length))];
        Deviations = [.. Times.Select(time => Math.Sqrt(OffS * OffS + OffShare * OffShare * time.AfterS * time.AfterS))];
    }

    /// <summary>The times, in an order of their own.</summary>
    public ImmutableArray<TimedPassing> Times { get; }

    /// <summary>Of each time, which tiers took no part in its flood.</summary>
    public ImmutableArray<TierSet> Resting { get; }

    /// <summary>How well each can be known, s.</summary>
    public ImmutableArray<double> Deviations { get; }

    /// <summary>The times, each in units of how well it can be known.</summary>
    public double[] Measured => [.. Times.Zip(Deviations, (time, deviation) => time.AfterS / deviation)];

    /// <summary>What the simulated rack says of each time, s; null for one that is never reached.</summary>
    /// <param name="measured">What was measured.</param>
    public ImmutableArray<double?> Say(MeasuredRack? measured)
    {
        var like = rack with { Measured = measured };
        return
        [
            .. runs.SelectMany(run =>
            {
                between?.Invoke();
                var said = FloodTiming.Of(like, run.As, run.Marks);
                return run.Times.Select(time => said[run.Marks.IndexOf(time.Mark)]);
            }),
        ];
    }

    /// <summary>The same, in units of how well each time can be known.</summary>
    /// <param name="measured">What was measured.</param>
    public double[] Model(MeasuredRack measured) =>
        [.. Say(measured).Zip(Deviations, (seconds, deviation) => (seconds ?? NeverS) / deviation)];

    private static FloodRun Rounded(FloodRun run) => run with
    {
        PumpRan = Duration.FromSeconds(Math.Round(run.PumpRan.TotalSeconds)),
        ReservoirMm = SameLevelMm * Math.Round(run.ReservoirMm / SameLevelMm),
    };

    private sealed record Run(FloodRun As, ImmutableArray<FloodMark> Marks, ImmutableArray<TimedPassing> Times);
}
