using RackController.Model;

namespace RackController.Plant;

/// <summary>What each sensor of a site would say if it were perfect.</summary>
internal sealed class SensorTruth
{
    private readonly Source[] sources;

    public SensorTruth(Site site, SimulatedRack[] racks, SiteElectrics electrics)
    {
        sources =
        [
            .. site.Sensors.Select(sensor => sensor.Circuit is { } circuit
                ? new Source(sensor, null, electrics.Circuits[circuit.Index], null)
                : SourceAt(sensor, racks[sensor.Rack!.Value.Index], electrics)),
        ];
    }

    /// <summary>The quantity that a kind of sensor measures or switches by; null for what is electric, for light, which comes
    /// and goes with it, and for the leak rope, which knows about mops.</summary>
    /// <param name="kind">The kind.</param>
    public static RackQuantity? Quantity(SensorKind kind) => kind switch
    {
        SensorKind.ReservoirLowFloat or SensorKind.ReservoirFullFloat or SensorKind.ReservoirLevel => RackQuantity.ReservoirDepth,
        SensorKind.TrayFullFloat or SensorKind.TrayHighFloat or SensorKind.TrayLevel => RackQuantity.TrayDepth,
        SensorKind.DripTrayFloat => RackQuantity.DripTrayDepth,
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
    public double Value(SensorId sensor)
    {
        ref readonly var source = ref sources[sensor.Index];
        return source switch
        {
            { Float: { } level } => Contact(level.IsReached),
            { Circuit: { } circuit } => source.Sensor.Kind == SensorKind.CircuitCurrent
                ? circuit.CurrentA
                : Contact(circuit.BehindBreakerShare >= VoltageNeed.SensedFromShare),
            { Pump: { } pump } => pump.CurrentA,
            { Sensor.Kind: SensorKind.LightLevel } => source.Rack!.Lux(source.Sensor.TierNumber!.Value),
            { Quantity: { } quantity } => source.Rack!.Value(quantity, source.Sensor.TierNumber),
            _ => Contact(source.Rack!.IsRopeWet),
        };
    }

    private static Source SourceAt(Sensor sensor, SimulatedRack rack, SiteElectrics electrics) => new(
        sensor, rack, null, Quantity(sensor.Kind))
    {
        Pump = sensor.Kind == SensorKind.PumpCurrent ? electrics.Loads[rack.Rack.Pump.Load.Index] : null,
        Float = sensor.Kind.IsFloat() ? rack.Watch(Quantity(sensor.Kind)!.Value, sensor.TierNumber, sensor.HeightMm) : null,
    };

    private static double Contact(bool closed) => closed ? 1 : 0;

    private readonly record struct Source(Sensor Sensor, SimulatedRack? Rack, CircuitElectrics? Circuit, RackQuantity? Quantity)
    {
        public Threshold? Float { get; init; }

        public LoadElectrics? Pump { get; init; }
    }
}
