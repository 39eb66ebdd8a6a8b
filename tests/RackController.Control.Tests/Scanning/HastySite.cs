using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Scanning;

/// <summary>
/// Sites on which every row of the cause-and-effect table may act within minutes: one to four racks on one to three circuits, loads of
/// one rack on several of them, sensors of every kind, and limits so hasty that a day of trouble fits into an hour.
/// </summary>
internal static class HastySite
{
    public static Site Of(Dice dice)
    {
        var site = Sites.ManyRacks(dice.Between(1, 4), racksToACircuit: 1, tiers: dice.Between(1, 3));
        site = OnCircuits(site, dice.Between(1, 3), dice);
        site = site with { Loads = [.. site.Loads.Select(load => load with { RatedOperations = dice.Of(2, 20, 100_000) })] };
        var measuresCurrents = !dice.Chance(2);
        var sensors = site.Sensors.Concat(site.Racks.SelectMany(rack => MoreOn(site, rack, dice)))
            .Where(sensor => measuresCurrents || sensor.Kind is not (SensorKind.CircuitCurrent or SensorKind.PumpCurrent));
        site = site with { Sensors = [.. Renumbered([.. sensors])] };
        return site with
        {
            Racks = [.. site.Racks.Select(rack => rack with { Limits = Limits(dice), Schedule = Schedule(site, rack, dice) })],
            Scan = new ScanTiming(Duration.FromMilliseconds(100), Duration.FromMilliseconds(500)),
        };
    }

    private static Site OnCircuits(Site site, int count, Dice dice)
    {
        var (circuit, sense) = (site.Circuits[0], site.Sensors[^1]);
        var ids = Enumerable.Range(0, count).Select(i => new CircuitId(i)).ToList();
        return site with
        {
            Circuits =
            [
                .. ids.Select(id => circuit with
                {
                    Id = id, Name = $"sockets {id.Index + 1}", ContinuousLimitA = dice.Between(0.5, 6), SupplySense = null,
                    HasUpstreamContactor = dice.Chance(2),
                }),
            ],
            Loads = [.. site.Loads.Select(load => load with { Circuit = dice.Of<CircuitId>([.. ids]) })],
            Sensors =
            [
                .. site.Sensors.Where(sensor => sensor.Circuit is null),
                .. ids.SelectMany(id => Enumerable.Range(1, dice.Between(0, 2)).Select(n => sense with
                {
                    Name = $"sockets {id.Index + 1}/sense {n}", Circuit = id,
                })),
                .. ids.Select(id => sense with
                {
                    Name = $"sockets {id.Index + 1}/current", Kind = SensorKind.CircuitCurrent, Circuit = id, PlausibleMax = 20,
                }),
            ],
        };
    }

    private static IEnumerable<Sensor> MoreOn(Site site, Rack rack, Dice dice)
    {
        Sensor Like(string name, SensorKind kind, int? tier, double max) => site.Sensors[0] with
        {
            Name = $"{rack.Name}/{name}",
            Kind = kind,
            Rack = rack.Id,
            TierNumber = tier,
            PlausibleMax = max,
            StaleAfter = Duration.FromMilliseconds(dice.Of(200, 2_000, 30_000)),
        };

        yield return Like("air", SensorKind.AirTemperature, null, 60);
        yield return Like("humidity", SensorKind.AirHumidity, null, 100);
        yield return Like("water", SensorKind.WaterTemperature, null, 45);
        yield return Like("pump current", SensorKind.PumpCurrent, null, 5);
        yield return Like("level", SensorKind.ReservoirLevel, null, 400);
        if (dice.Chance(2))
        {
            yield return Like("flow", SensorKind.PumpFlow, null, 72);
        }

        yield return Like("drip tray float", SensorKind.DripTrayFloat, null, 1);
        yield return Like("second low float", SensorKind.ReservoirLowFloat, null, 1);

        // Only of floats at different heights can one contradict the other, and on most racks none does, for the sake of the other rows.
        var contradicts = dice.Chance(3);
        yield return Like("full float", SensorKind.ReservoirFullFloat, null, 1) with { HeightMm = contradicts ? 300 : 60 };
        foreach (var tier in rack.Tiers.Where(_ => !dice.Chance(3)))
        {
            yield return Like($"tier {tier.Number} full", SensorKind.TrayFullFloat, tier.Number, 1);
            yield return Like($"tier {tier.Number} level", SensorKind.TrayLevel, tier.Number, 80);
            yield return Like($"tier {tier.Number} air", SensorKind.AirTemperature, tier.Number, 60);
            yield return Like($"tier {tier.Number} light", SensorKind.LightLevel, tier.Number, 20_000);
        }
    }

    private static IEnumerable<Sensor> Renumbered(ImmutableArray<Sensor> sensors) =>
        sensors.Select((sensor, i) => sensor with { Id = new SensorId(i) });

    private static InterlockLimits Limits(Dice dice) => InterlockLimits.Default with
    {
        PumpMaximumRun = Duration.FromSeconds(dice.Of(10, 45, 300)),
        PumpRest = Duration.FromSeconds(dice.Of(10, 60)),
        PumpDailyBudget = Duration.FromSeconds(dice.Of(60, 200, 10_000)),
        MaximumRunsToLatch = dice.Between(1, 3),
        LowFloatRestored = Duration.FromSeconds(dice.Between(1, 20)),
        LowFloatTripsToLatch = dice.Between(1, 3),
        NoFillWithin = Duration.FromSeconds(dice.Of(5, 8)),
        NoFillTripsToLatch = dice.Between(1, 3),
        NotDrainedAboveMm = dice.Of(3, 10, 40),
        SamplesToTrip = dice.Between(1, 3),
        ContactReturn = Duration.FromMilliseconds(dice.Of(100, 1_000, 5_000)),
        SupplyQuietPeriod = Duration.FromSeconds(dice.Of(5, 20)),
        RestartSpacing = Duration.FromSeconds(dice.Of(1, 4)),
        SupplyTripsToLatch = dice.Between(1, 4),
        SwitchingStagger = Duration.FromMilliseconds(dice.Of(100, 1_000)),
        RelayRest = Duration.FromSeconds(dice.Of(0, 5)),
        ServiceHoldMaximum = Duration.FromSeconds(dice.Of(60, 600)),
        ServiceHoldWarning = Duration.FromSeconds(dice.Of(10, 30)),
        CircuitOverLimitAfter = Duration.FromSeconds(dice.Of(2, 10)),
        CircuitOverLimitReturn = Duration.FromSeconds(dice.Of(10, 60)),
        CircuitOverLimitsToLatch = dice.Between(1, 3),
        LoadCheckEvery = Duration.FromSeconds(dice.Of(40, 600)),
        ScanRecovery = Duration.FromSeconds(dice.Of(1, 10)),
        LightMissingBelowPercent = dice.Of(10, 60),
        LightUnaskedAbovePercent = dice.Of(10, 30),
        LightSeenWithin = Duration.FromSeconds(dice.Of(10, 60)),
        FloatTestInterval = Duration.FromMinutes(dice.Of(10, 100)),
        LeakRopeTestInterval = Duration.FromMinutes(dice.Of(10, 100)),
        SupplySenseTestInterval = Duration.FromMinutes(dice.Of(10, 100)),
        CurrentTestInterval = Duration.FromMinutes(dice.Of(10, 100)),
        RelayTestInterval = Duration.FromMinutes(dice.Of(10, 100)),
        FirstTestWithin = Duration.FromMinutes(dice.Of(5, 100)),
        TestStepWithin = Duration.FromSeconds(dice.Of(10, 60)),
        FloatsContradictAfter = Duration.FromSeconds(dice.Of(1, 10)),
        StillFloodsToTell = dice.Between(1, 2),
        StillFloodsToForbid = dice.Between(2, 4),
    };

    private static RackSchedule Schedule(Site site, Rack rack, Dice dice) => rack.Schedule with
    {
        LightStagger = Duration.FromMinutes(dice.Of(0, 7)),
        Lights =
        [
            .. rack.Tiers.Select(tier => tier.Light is null ? null : new Photoperiod(
                new LocalTime(dice.Between(0, 23), dice.Of(0, 30)), Duration.FromMinutes(dice.Of(0, 20, 600, 960, 1_440)))),
        ],
        Floods = new FloodPlan(
            Times(dice),
            dice.Chance(3)
                ? new FillForTime(Duration.FromSeconds(dice.Of(5, 40)))
                : new FillUntilFull(Duration.FromSeconds(dice.Of(5, 20)), FullDepthMm: 40),
            Duration.FromSeconds(dice.Of(0, 20)),
            Duration.FromSeconds(dice.Of(0, 50)),
            dice.Of(MissedFloods.RunOne, MissedFloods.Skip)),
        Runs = [.. rack.Schedule.Runs.Select(run => Run(site, rack, run.Load, dice))],
    };

    private static FloodTimes Times(Dice dice) => dice.Between(0, 7) switch
    {
        0 => new NoFloods(),
        1 => new FloodsOverPhotoperiod(dice.Between(1, 96)),
        2 => new FloodsAt([new LocalTime(1, 30), new LocalTime(2, 30), new LocalTime(13, 0)]),
        _ => new FloodsEvery(Duration.FromMinutes(dice.Of(1, 3, 15)), new LocalTime(0, 0), Duration.FromHours(24)),
    };

    private static RunPlan Run(Site site, Rack rack, LoadId load, Dice dice) => dice.Between(0, 3) switch
    {
        0 => new RunAlways(load),
        1 => new RunInCycles(load, Duration.FromSeconds(dice.Of(1, 70)), Duration.FromSeconds(dice.Of(0, 130))),
        2 => new RunByReading(load, site.SensorNamed($"{rack.Name}/air"), OnAbove: 28, OffBelow: 24),
        _ => new RunByReading(load, site.SensorNamed($"{rack.Name}/humidity"), OnAbove: 70, OffBelow: 55),
    };
}
