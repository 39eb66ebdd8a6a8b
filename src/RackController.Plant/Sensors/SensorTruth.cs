using RackController.Model;

namespace RackController.Plant;

/// <summary>What each sensor of a site would say if it were perfect.</summary>
internal sealed class SensorTruth
{
    /// <summary>Less water on the floor than this does not bridge a leak rope, m3.</summary>
    public const double RopeWetM3 = 20e-6;

    private readonly SimulatedRack[] racks;
    private readonly SiteElectrics electrics;

    public SensorTruth(SimulatedRack[] racks, SiteElectrics electrics)
    {
        this.racks = racks;
        this.electrics = electrics;
    }

    /// <summary>The true value, in the unit of the sensor's kind.</summary>
    /// <param name="sensor">The sensor.</param>
    public double Value(Sensor sensor)
    {
        switch (sensor.Kind)
        {
            case SensorKind.SupplySense:
                return Contact(electrics.Circuits[sensor.Circuit!.Value.Index].SupplyShare >= VoltageNeed.SensedFromShare);
            case SensorKind.CircuitCurrent:
                return electrics.Circuits[sensor.Circuit!.Value.Index].CurrentA;
            default:
                var rack = racks[sensor.Rack!.Value.Index];
                return sensor.TierNumber is { } number ? OfTier(sensor, rack, number - 1) : OfRack(sensor, rack);
        }
    }

    /// <summary>When that value was true: now, or at the last sample of a slow sensor.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="now">The time now.</param>
    public MonotonicTime TakenAt(Sensor sensor, MonotonicTime now) =>
        IsSlow(sensor.Kind) ? racks[sensor.Rack!.Value.Index].Climate.SampledAt : now;

    /// <summary>Whether a kind of sensor measures every 10 s instead of at every look.</summary>
    /// <param name="kind">The kind.</param>
    public static bool IsSlow(SensorKind kind) =>
        kind is SensorKind.WaterTemperature or SensorKind.AirTemperature or SensorKind.AirHumidity;

    private static double Contact(bool closed) => closed ? 1 : 0;

    private static double OfTier(Sensor sensor, SimulatedRack rack, int tier) => sensor.Kind switch
    {
        SensorKind.TrayFullFloat or SensorKind.TrayHighFloat =>
            Contact(rack.Water.TrayDepthM(tier) * 1000 >= sensor.HeightMm),
        SensorKind.TrayLevel => rack.Water.TrayDepthM(tier) * 1000,
        SensorKind.AirTemperature => rack.Climate.SampledAirC[tier],
        SensorKind.AirHumidity => HumidAir.RelativePercent(rack.Climate.SampledAirC[tier], rack.RoomVapourKPa),
        _ => OfRack(sensor, rack),
    };

    private static double OfRack(Sensor sensor, SimulatedRack rack) => sensor.Kind switch
    {
        SensorKind.ReservoirLowFloat or SensorKind.ReservoirFullFloat =>
            Contact(rack.Water.ReservoirDepthM * 1000 >= sensor.HeightMm),
        SensorKind.ReservoirLevel => rack.Water.ReservoirDepthM * 1000,
        SensorKind.LeakRope => Contact(rack.OnFloorM3 >= RopeWetM3),
        SensorKind.PumpFlow => rack.Water.PumpFlowM3PerS * Litres.PerMinutePerM3PerS,
        SensorKind.WaterTemperature => rack.Climate.SampledWaterC,
        SensorKind.AirTemperature => MeanAirC(rack),
        SensorKind.AirHumidity => HumidAir.RelativePercent(MeanAirC(rack), rack.RoomVapourKPa),
        _ => throw new InvariantBrokenException($"a {sensor.Kind} watches a tier"),
    };

    private static double MeanAirC(SimulatedRack rack)
    {
        var sum = 0.0;
        foreach (var celsius in rack.Climate.SampledAirC)
        {
            sum += celsius;
        }

        return sum / rack.Climate.SampledAirC.Length;
    }
}
