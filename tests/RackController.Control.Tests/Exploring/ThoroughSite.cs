using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Exploring;

/// <summary>A rack of one tier with a sensor of every kind, on which every row of the table stands, with limits that are few and short so
/// that a walk through all states is short too.</summary>
internal static class ThoroughSite
{
    public static Site Make()
    {
        var site = Sites.OneRack(tiers: 1).WithContactor();
        var missing = Enum.GetValues<SensorKind>().Except(site.Sensors.Select(sensor => sensor.Kind)).OrderBy(IsOfTier).ToList();
        site = site with { Sensors = [.. site.Sensors, .. missing.Select((kind, i) => Sensor(site, kind, site.Sensors.Length + i))] };
        return (site with
        {
            // Little more than its loads draw, so that what is measured can be too much and as it should be.
            Circuits = [site.Circuits[0] with { ContinuousLimitA = 1.5 }],
            Loads = [.. site.Loads.Select(load => load with { RatedOperations = 3 })],
        })
            .WithLimits(_ => Limits)
            .WithSchedule(schedule => schedule with
            {
                Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromSeconds(10), FullDepthMm: 40) },
            });
    }

    private static InterlockLimits Limits { get; } = InterlockLimits.Default with
    {
        PumpMaximumRun = Duration.FromSeconds(10),
        PumpRest = Duration.FromSeconds(10),
        PumpDailyBudget = Duration.FromSeconds(25),
        MaximumRunsToLatch = 2,
        LowFloatRestored = Duration.FromSeconds(10),
        LowFloatTripsToLatch = 2,
        NoFillWithin = Duration.FromSeconds(5),
        NoFillTripsToLatch = 2,
        SupplyQuietPeriod = Duration.FromSeconds(10),
        SupplyTripsToLatch = 2,
        RestartSpacing = Duration.FromSeconds(1),
        SwitchingStagger = Duration.FromSeconds(1),
        RelayRest = Duration.FromSeconds(1),
        CircuitOverLimitAfter = Duration.FromSeconds(10),
        CircuitOverLimitReturn = Duration.FromSeconds(60),
        CircuitOverLimitsToLatch = 2,
        LoadCheckEvery = Duration.FromMinutes(10),
        ServiceHoldMaximum = Duration.FromSeconds(60),
        ServiceHoldWarning = Duration.FromSeconds(10),
        ScanRecovery = Duration.FromSeconds(10),
        LightSeenWithin = Duration.FromSeconds(10),
        FloatsContradictAfter = Duration.FromSeconds(10),
        StillFloodsToTell = 1,
        StillFloodsToForbid = 1,
    };

    private static Sensor Sensor(Site site, SensorKind kind, int index)
    {
        var isOfCircuit = kind is SensorKind.CircuitCurrent or SensorKind.SupplySense;
        return site.Sensors[0] with
        {
            Id = new SensorId(index),
            Name = $"{(isOfCircuit ? "sockets" : "north")}/{kind}",
            Kind = kind,
            Rack = isOfCircuit ? null : new RackId(0),
            Circuit = isOfCircuit ? new CircuitId(0) : null,
            TierNumber = IsOfTier(kind) ? 1 : null,
            HeightMm = kind switch
            {
                SensorKind.ReservoirFullFloat => 300,
                SensorKind.TrayFullFloat => 45,
                _ => 0,
            },
            PlausibleMax = kind switch
            {
                _ when kind.IsContact() => 1,
                SensorKind.ReservoirLevel => 400,
                SensorKind.LightLevel => 20_000,
                _ => 40,
            },
        };
    }

    private static bool IsOfTier(SensorKind kind) => kind is SensorKind.TrayFullFloat or SensorKind.TrayHighFloat or SensorKind.TrayLevel
        or SensorKind.LightLevel;
}
