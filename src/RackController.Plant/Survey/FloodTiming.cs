using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Plant;

/// <summary>When a flood of the simulated rack passes marks: trays empty and media moist as the pump begins, all else whole.</summary>
public static class FloodTiming
{
    // A passage lies on a straight line between two looks; at a second apart that is exact to a hundredth.
    private const double LookEveryS = 1;

    /// <summary>Whoever waits longer for a tray to drain times something else.</summary>
    private const double LongestDrainS = 2 * 3600;

    /// <summary>The times, in seconds, in the order of the marks; null for one that is not passed.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="run">How it is flooded.</param>
    /// <param name="marks">What is timed.</param>
    public static ImmutableArray<double?> Of(Rack rack, FloodRun run, ImmutableArray<FloodMark> marks)
    {
        ArgumentNullException.ThrowIfNull(rack);
        ArgumentNullException.ThrowIfNull(run);
        var start = PlantStart.Default with
        {
            RoomC = PlantStart.Default.WaterC,
            RoomHumidityPercent = 100,
            CropFactor = 0,
            ReservoirShare = run.ReservoirMm * rack.Reservoir.AreaM2 / rack.Reservoir.NormalVolumeL,
        };
        var water = new RackDynamics(rack, start);
        var times = new double?[marks.Length];
        Turn(water, rack, run.Resting, pump: true);
        Follow(water, marks, times, FloodPassing.Rising, run.PumpRan.TotalSeconds, endsEarly: false);
        Turn(water, rack, run.Resting, pump: false);
        Follow(water, marks, times, FloodPassing.Falling, LongestDrainS, endsEarly: true);
        return [.. times];
    }

    // What runs back through the supply needs open valves: without a check valve they stay so.
    private static void Turn(RackDynamics water, Rack rack, TierSet resting, bool pump)
    {
        var inputs = new RackInputs(rack.Tiers.Length) { PumpSpeed = pump ? 1 : 0 };
        foreach (var (index, tier) in rack.Tiers.Index())
        {
            inputs.ValveOpen[index] = tier.Valve is null || (!resting.Contains(tier.Number) && (pump || !rack.Supply.HasCheckValve));
        }

        water.Take(inputs);
    }

    private static void Follow(
        RackDynamics water, ImmutableArray<FloodMark> marks, double?[] times, FloodPassing passing, double lengthS, bool endsEarly)
    {
        var timed = Enumerable.Range(0, marks.Length).Where(index => marks[index].Passing == passing).ToArray();
        var depths = timed.Select(index => DepthMm(water, marks[index])).ToArray();
        var sign = passing == FloodPassing.Rising ? 1 : -1;
        for (var passedS = 0.0; passedS < lengthS && !(endsEarly && IsOver(timed, marks, depths, times)); passedS += LookEveryS)
        {
            var stepS = Math.Min(LookEveryS, lengthS - passedS);
            water.AdvanceTo(PlantTime.After(water.Now, stepS));
            for (var at = 0; at < timed.Length; at++)
            {
                var (mark, before) = (marks[timed[at]], depths[at]);
                var after = depths[at] = DepthMm(water, mark);
                if (sign * before < sign * mark.DepthMm && sign * after >= sign * mark.DepthMm)
                {
                    times[timed[at]] ??= passedS + stepS * (mark.DepthMm - before) / (after - before);
                }
            }
        }
    }

    // A tray that never rose to its mark does not fall past it either.
    private static bool IsOver(int[] timed, ImmutableArray<FloodMark> marks, double[] depths, double?[] times) =>
        timed.Index().All(one => times[one.Item] is not null || depths[one.Index] < marks[one.Item].DepthMm);

    private static double DepthMm(RackDynamics water, FloodMark mark) => water.TrayDepthM(mark.TierNumber - 1) * 1000;
}
