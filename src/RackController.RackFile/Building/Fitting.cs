using RackController.Model;
using RackController.RackFile.Checks;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Building;

/// <summary>Fits one more part to a site that is already built, to see what it would change. Heights are common practice, no
/// source.</summary>
internal static class Fitting
{
    private const double LowFloatOverIntakeMm = 30;
    private const double DripFloatMm = 15;
    private const double DripTrayDepthMm = 80;

    /// <summary>A drip tray holds the largest tray to its rim, and half as much again for pipes and a pump that runs out.</summary>
    private const double DripTrayShare = 1.5;

    /// <summary>Fits a sensor to a rack; one to each of its tiers where it belongs to those.</summary>
    /// <param name="site">The site.</param>
    /// <param name="rack">Its rack, which has none of the kind.</param>
    /// <param name="kind">What it measures.</param>
    public static Site AtRack(Site site, Rack rack, SensorKind kind)
    {
        var fitted = kind == SensorKind.DripTrayFloat ? WithDripTray(site, rack) : site;
        var at = fitted[rack.Id];
        if (kind is not (SensorKind.TrayHighFloat or SensorKind.TrayFullFloat or SensorKind.LightLevel))
        {
            return Add(fitted, at, kind, HeightMm(at, kind), tier: null);
        }

        foreach (var tier in at.Tiers.Where(tier => tier.InUse && (kind != SensorKind.LightLevel || tier.LitLux > 0)))
        {
            fitted = Add(fitted, at, kind, kind.IsFloat() ? HeightMm(tier.Tray, kind) : 0, tier);
        }

        return fitted;
    }

    /// <summary>Fits a sensor to a circuit.</summary>
    /// <param name="site">The site.</param>
    /// <param name="circuit">Its circuit, which has none of the kind.</param>
    /// <param name="kind">What it measures.</param>
    public static Site AtCircuit(Site site, Circuit circuit, SensorKind kind)
    {
        var sensor = Sensor(site, kind, circuit.Name, null, PlausibleRange.AtCircuit(kind, circuit.BreakerA)) with
        {
            Circuit = circuit.Id,
        };
        var fitted = site with { Sensors = site.Sensors.Add(sensor) };
        return kind != SensorKind.SupplySense
            ? fitted
            : fitted with { Circuits = site.Circuits.SetItem(circuit.Id.Index, circuit with { SupplySense = sensor.Id }) };
    }

    /// <summary>Fits a contactor to a circuit, and the current of each of its pumps where that is not measured.</summary>
    /// <param name="site">The site.</param>
    /// <param name="circuit">Its circuit.</param>
    public static Site Contactor(Site site, Circuit circuit)
    {
        var fitted = site with
        {
            Circuits = site.Circuits.SetItem(circuit.Id.Index, circuit with { HasUpstreamContactor = true }),
        };
        return site.Racks
            .Where(rack => site[rack.Pump.Load].Circuit == circuit.Id)
            .Where(rack => !site.Sensors.Any(sensor => sensor.Rack == rack.Id && sensor.Kind == SensorKind.PumpCurrent))
            .Aggregate(fitted, (so, rack) => AtRack(so, rack, SensorKind.PumpCurrent));
    }

    /// <summary>Fits a float to the pump's own wire, in a drip tray.</summary>
    /// <param name="site">The site.</param>
    /// <param name="rack">Its rack, which has none.</param>
    public static Site FloatCutout(Site site, Rack rack)
    {
        var fitted = WithDripTray(site, rack);
        var at = fitted[rack.Id];
        return With(fitted, at with { FloatCutout = new FloatCutout(null, HeightMm(at, SensorKind.DripTrayFloat)) });
    }

    /// <summary>Fits a time relay to the pump's own wire, a third longer than the controller lets the pump run.</summary>
    /// <param name="site">The site.</param>
    /// <param name="rack">Its rack, which has none.</param>
    public static Site TimeCutout(Site site, Rack rack) =>
        With(site, rack with { TimeCutout = new TimeCutout(rack.Limits.PumpMaximumRun * 4 / 3) });

    private static Site With(Site site, Rack rack) => site with { Racks = site.Racks.SetItem(rack.Id.Index, rack) };

    private static Site Add(Site site, Rack rack, SensorKind kind, double heightMm, Tier? tier)
    {
        var pump = site[rack.Pump.Load];
        var pumpStartA = pump.InrushMultiple * pump.CurrentA(site[pump.Circuit].VoltageV);
        var sensor = Sensor(site, kind, rack.Name, tier, PlausibleRange.AtRack(kind, rack, tier, pumpStartA)) with
        {
            Rack = rack.Id,
            TierNumber = tier?.Number,
            HeightMm = heightMm,
        };
        return site with { Sensors = site.Sensors.Add(sensor) };
    }

    private static Sensor Sensor(Site site, SensorKind kind, string owner, Tier? tier, (double Min, double Max) range) => new()
    {
        Id = new SensorId(site.Sensors.Length),
        Name = $"{owner}/{(tier is null ? "" : $"tier {tier.Number} ")}{SensorsMapping.NameOf(kind)}",
        Kind = kind,
        PlausibleMin = range.Min,
        PlausibleMax = range.Max,
        StaleAfter = SensorMapping.StaleAfter(kind),
    };

    private static Site WithDripTray(Site site, Rack rack) => rack.DripTray is not null
        ? site
        : With(site, rack with
        {
            DripTray = new DripTray(
                DripTrayShare * rack.Tiers.Max(tier => RackGeometry.HeldL(tier.Tray, tier.Tray.RimDepthMm)), DripTrayDepthMm),
        });

    private static double HeightMm(Rack rack, SensorKind kind) => kind switch
    {
        SensorKind.ReservoirLowFloat => LowFloatMm(rack),
        SensorKind.DripTrayFloat => Math.Min(DripFloatMm, rack.DripTray!.DepthMm / 2),
        _ => 0,
    };

    // Between an overflowing standpipe and the rim, or where a tray counts as filled.
    private static double HeightMm(FloodTray tray, SensorKind kind) => kind == SensorKind.TrayHighFloat
        ? (Math.Min(tray.StandpipeHeightMm + TrayChecks.HeadOverStandpipeMm, tray.RimDepthMm) + tray.RimDepthMm) / 2
        : tray.FilledMm;

    // Above the pump's intake, and never where a flood of every tray would leave it dry.
    private static double LowFloatMm(Rack rack)
    {
        var tank = rack.Reservoir;
        var traysL = rack.Tiers.Where(tier => tier.InUse).Sum(tier => RackGeometry.HeldL(tier.Tray, tier.Tray.StandpipeHeightMm));
        var leftMm = (tank.NormalVolumeL - traysL) / tank.AreaM2;
        return Math.Min(tank.PumpIntakeMm + LowFloatOverIntakeMm, (tank.PumpIntakeMm + Math.Max(tank.PumpIntakeMm, leftMm)) / 2);
    }
}
