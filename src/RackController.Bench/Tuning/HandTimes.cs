using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>The times of one tier that a person took with a stopwatch, in the order of the floods.</summary>
/// <param name="Tier">The tier, 1 at the bottom.</param>
/// <param name="Seconds">The times, s: above 0.</param>
public sealed record HandTimes(int Tier, ImmutableArray<double> Seconds)
{
    /// <summary>
    /// The floods that they are of: the first time of every tier is of the first, and so on. Filled is when water runs into the
    /// standpipe; drained is when less than <see cref="FloodTray.DrainedBelowMm"/> stands in the tray.
    /// </summary>
    /// <param name="rack">The rack.</param>
    /// <param name="fills">How long each tier took to fill, from the pump's start.</param>
    /// <param name="drains">How long each took to drain, from the pump's stop.</param>
    public static ImmutableArray<TimedFlood> Floods(Rack rack, IReadOnlyList<HandTimes> fills, IReadOnlyList<HandTimes> drains)
    {
        ArgumentNullException.ThrowIfNull(rack);
        var floods = fills.Concat(drains).Select(one => one.Seconds.Length).DefaultIfEmpty(0).Max();
        return [.. Enumerable.Range(0, floods).Select(flood =>
        {
            var times = Of(rack, fills, flood, FloodPassing.Rising).Concat(Of(rack, drains, flood, FloodPassing.Falling))
                .ToImmutableArray();
            return new TimedFlood($"flood {flood + 1} by hand", Run(rack, times), times);
        })];
    }

    private static IEnumerable<TimedPassing> Of(Rack rack, IReadOnlyList<HandTimes> all, int flood, FloodPassing passing) =>
        all.Where(one => flood < one.Seconds.Length)
            .Select(one => new TimedPassing(new FloodMark(one.Tier, passing, DepthMm(rack, one.Tier, passing)), one.Seconds[flood]));

    // A tier that the rack has not is refused with the other nonsense.
    private static double DepthMm(Rack rack, int tier, FloodPassing passing) =>
        passing == FloodPassing.Falling || tier > rack.Tiers.Length ? FloodTray.DrainedBelowMm : rack.Tier(tier).Tray.StandpipeHeightMm;

    // As the schedule floods, and at least until the last tray is full; how long the water then stands changes little.
    private static FloodRun Run(Rack rack, IEnumerable<TimedPassing> times)
    {
        var floods = rack.Schedule.Floods;
        var filled = times.Where(time => time.Mark.Passing == FloodPassing.Rising).Select(time => Duration.FromSeconds(time.AfterS));
        return new FloodRun(
            filled.Append(floods.Fill.Limit).Max() + floods.Soak, rack.Reservoir.NormalVolumeL / rack.Reservoir.AreaM2)
        {
            Resting = TierSet.Of(rack.Tiers.Where(tier => !tier.InUse).Select(tier => tier.Number)),
        };
    }
}
