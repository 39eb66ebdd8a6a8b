using System.Collections.Immutable;
using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Testing;

/// <summary>Random wishes and limits, busy enough that a run of minutes sees floods, lights and rests. Whether they make sense
/// together is for a rack file's reader to say; a controller has to bear any.</summary>
public static class RandomSchedules
{
    /// <summary>Floods at times of the morning, every so often, as often as the lights say, or none.</summary>
    public static Gen<FloodPlan> Floods { get; } =
        from times in Gen.Frequency(
            (5, Gen.Int[1, 60].Select(minutes => (FloodTimes)new FloodsEvery(
                Duration.FromMinutes(minutes), LocalTime.Midnight, Duration.FromHours(24)))),
            (2, Gen.Int[6 * 60, 9 * 60].HashSet[1, 20].Select(minutes => (FloodTimes)new FloodsAt(
                [.. minutes.Order().Select(minute => LocalTime.Midnight.PlusMinutes(minute))]))),
            (1, Gen.Int[1, 96].Select(count => (FloodTimes)new FloodsOverPhotoperiod(count))),
            (1, Gen.Const((FloodTimes)new NoFloods())))
        from fillS in RandomParts.Fine(5, 600)
        from untilFullMm in RandomParts.Fine(5, 60).Nullable(0.5)
        from soakS in RandomParts.Fine(0, 300)
        from drainS in RandomParts.Fine(0, 600)
        from missed in Gen.Enum<MissedFloods>()
        let fill = Duration.FromSeconds(fillS)
        select new FloodPlan(
            times, untilFullMm is { } fullMm ? new FillUntilFull(fill, fullMm) : new FillForTime(fill),
            Duration.FromSeconds(soakS), Duration.FromSeconds(drainS), missed);

    /// <summary>A photoperiod that begins in the morning and lasts minutes or hours; null for a tier that grows in the dark.</summary>
    public static Gen<Photoperiod?> Light { get; } =
        from startS in Gen.Int[5 * 3600, 9 * 3600]
        from minutes in Gen.Frequency((2, RandomParts.Fine(0, 120)), (1, RandomParts.Fine(0, 24 * 60)))
        from isDark in Gen.Frequency((4, Gen.Const(false)), (1, Gen.Const(true)))
        select isDark ? null : new Photoperiod(LocalTime.Midnight.PlusSeconds(startS), Duration.FromMinutes(minutes));

    /// <summary>Limits within their bounds, short enough for a run of minutes to meet them. Temperatures are whole numbers, as people
    /// write them, so that a room may stand exactly at one.</summary>
    public static Gen<InterlockLimits> Limits { get; } =
        from pump in Gen.Select(RandomParts.Fine(10, 900), RandomParts.Fine(10, 600), RandomParts.Fine(60, 3600), Gen.Int[1, 10])
        from contact in Gen.Select(Gen.Int[1, 5], RandomParts.Fine(0.1, 10), RandomParts.Fine(1, 120), Gen.Int[1, 10])
        from supply in Gen.Select(RandomParts.Fine(5, 120), RandomParts.Fine(1, 20), Gen.Int[1, 20])
        from relay in Gen.Select(RandomParts.Fine(0.1, 10), RandomParts.Fine(0, 30), RandomParts.Fine(60, 600), RandomParts.Fine(10, 120))
        from heat in Gen.Select(Gen.Int[20, 45], Gen.Int[1, 10], Gen.Int[10, 20], Gen.Int[15, 30])
        select new InterlockLimits
        {
            PumpMaximumRun = Duration.FromSeconds(pump.Item1),
            PumpRest = Duration.FromSeconds(pump.Item2),
            PumpDailyBudget = Duration.FromSeconds(pump.Item3),
            MaximumRunsToLatch = pump.Item4,
            SamplesToTrip = contact.Item1,
            ContactReturn = Duration.FromSeconds(contact.Item2),
            LowFloatRestored = Duration.FromSeconds(contact.Item3),
            LowFloatTripsToLatch = contact.Item4,
            SupplyQuietPeriod = Duration.FromSeconds(supply.Item1),
            RestartSpacing = Duration.FromSeconds(supply.Item2),
            SupplyTripsToLatch = supply.Item3,
            SwitchingStagger = Duration.FromSeconds(relay.Item1),
            RelayRest = Duration.FromSeconds(relay.Item2),
            ServiceHoldMaximum = Duration.FromSeconds(relay.Item3),
            ServiceHoldWarning = Duration.FromSeconds(relay.Item4),
            AirHotC = heat.Item1,
            AirHotReturnK = heat.Item2,
            WaterColdC = heat.Item3,
            WaterWarmC = Math.Max(heat.Item3 + 1, heat.Item4),
        };

    /// <summary>How a fan or an aerator runs.</summary>
    /// <param name="load">The load.</param>
    /// <param name="sensors">Air sensors that it may run by; none where there are none.</param>
    /// <param name="draw">A number that decides.</param>
    public static RunPlan Run(LoadId load, ImmutableArray<Sensor> sensors, int draw)
    {
        if (sensors.Length > 0 && draw % 2 == 0)
        {
            var sensor = sensors[draw / 2 % sensors.Length];
            var onAbove = (sensor.Kind == SensorKind.AirHumidity ? 40 : 18) + draw / 8 % 8;
            return new RunByReading(load, sensor.Id, onAbove, onAbove - 1 - draw / 64 % 3);
        }

        return draw % 3 == 0
            ? new RunAlways(load)
            : new RunInCycles(load, Duration.FromSeconds(1 + draw % 200), Duration.FromSeconds(1 + draw / 200 % 200));
    }
}
