using RackController.Model;

namespace RackController.Plant;

/// <summary>What each sensor of a site would say if it were perfect.</summary>
internal sealed class SensorTruth
{
    private readonly SimulatedRack[] racks;
    private readonly SiteElectrics electrics;
    private readonly Threshold?[] floats;

    public SensorTruth(Site site, SimulatedRack[] racks, SiteElectrics electrics)
    {
        this.racks = racks;
        this.electrics = electrics;
        floats =
        [
            .. site.Sensors.Select(sensor => sensor.Kind.IsFloat()
                ? racks[sensor.Rack!.Value.Index].Watch(Quantity(sensor.Kind)!.Value, sensor.TierNumber, sensor.HeightMm)
                : null),
        ];
    }

    /// <summary>The quantity that a kind of sensor measures or switches by; null for what belongs to a circuit, and for the leak
    /// rope, which knows about mops.</summary>
    /// <param name="kind">The kind.</param>
    public static RackQuantity? Quantity(SensorKind kind) => kind switch
    {
        SensorKind.ReservoirLowFloat or SensorKind.ReservoirFullFloat or SensorKind.ReservoirLevel => RackQuantity.ReservoirDepth,
        SensorKind.TrayFullFloat or SensorKind.TrayHighFloat or SensorKind.TrayLevel => RackQuantity.TrayDepth,
        SensorKind.PumpFlow => RackQuantity.PumpFlow,
        SensorKind.WaterTemperature => RackQuantity.WaterTemperature,
        SensorKind.AirTemperature => RackQuantity.AirTemperature,
        SensorKind.AirHumidity => RackQuantity.AirHumidity,
        _ => null,
    };

    /// <summary>Whether a kind of sensor answers within many seconds rather than at once.</summary>
    /// <param name="kind">The kind.</param>
    public static bool IsSlow(SensorKind kind) =>
        kind is SensorKind.WaterTemperature or SensorKind.AirTemperature or SensorKind.AirHumidity;

    /// <summary>The true value, in the unit of the sensor's kind.</summary>
    /// <param name="sensor">The sensor.</param>
    public double Value(Sensor sensor) => sensor.Kind switch
    {
        SensorKind.SupplySense => Contact(electrics.Circuits[sensor.Circuit!.Value.Index].SupplyShare >= VoltageNeed.SensedFromShare),
        SensorKind.CircuitCurrent => electrics.Circuits[sensor.Circuit!.Value.Index].CurrentA,
        SensorKind.LeakRope => Contact(racks[sensor.Rack!.Value.Index].IsFloorWet),
        _ => floats[sensor.Id.Index] is { } level
            ? Contact(level.IsReached)
            : racks[sensor.Rack!.Value.Index].Value(Quantity(sensor.Kind)!.Value, sensor.TierNumber),
    };

    private static double Contact(bool closed) => closed ? 1 : 0;
}
