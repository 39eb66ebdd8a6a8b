using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>The sensors of one rack or tier as written.</summary>
/// <param name="Sensors">Those that are fitted.</param>
/// <param name="IsComplete">Whether none was refused, so that what is missing is missing.</param>
internal sealed record SensorsPart(ImmutableArray<SensorPart> Sensors, bool IsComplete)
{
    /// <summary>What a key says that may be missing or refused.</summary>
    public static SensorsPart Of(MappingReader keys, Key<SensorsPart> key) =>
        keys.Find(key) ?? new SensorsPart([], !keys.IsWritten(key));

    public SensorPart? OfKind(SensorKind kind) => Sensors.FirstOrDefault(sensor => sensor.Kind == kind);
}

/// <summary>Reads the sensors of a rack, a tier or a circuit.</summary>
internal sealed class SensorsMapping : Mapping<SensorsPart>
{
    private readonly ImmutableArray<Key<SensorPart>> sensorKeys;

    private readonly ImmutableArray<(string Key, SensorKind Kind, string Name, string Doc)> sensors;

    private SensorsMapping(string name, ImmutableArray<(string Key, SensorKind Kind, string Name, string Doc)> sensors)
    {
        Name = name;
        this.sensors = sensors;
        sensorKeys = [.. sensors.Select(one => Key.Optional(one.Key, new SensorMapping(one.Kind, one.Name, one.Doc), one.Doc))];
    }

    public static SensorsMapping OfRack { get; } = new("sensors of a rack",
    [
        ("low-float", SensorKind.ReservoirLowFloat, "reservoir low float",
            "Float low in the reservoir; without water at it the pump stops."),
        ("full-float", SensorKind.ReservoirFullFloat, "reservoir full float",
            "Float high in the reservoir; water at it means full."),
        ("reservoir-level", SensorKind.ReservoirLevel, "reservoir level", "Depth of water in the reservoir."),
        ("leak-rope", SensorKind.LeakRope, "leak rope", "In the drip tray, or on the floor; wet stops the pump."),
        ("drip-tray-float", SensorKind.DripTrayFloat, "drip tray float", "Float in the drip tray; wet stops the pump."),
        ("pump-current", SensorKind.PumpCurrent, "pump current", "The current in the pump's own wire."),
        ("pump-flow", SensorKind.PumpFlow, "pump flow", "Flow from the pump."),
        ("water-temperature", SensorKind.WaterTemperature, "water temperature", "Temperature of the reservoir's water."),
        ("air-temperature", SensorKind.AirTemperature, "air temperature", "Temperature of the air at the rack."),
        ("air-humidity", SensorKind.AirHumidity, "air humidity", "Relative humidity of the air at the rack."),
    ]);

    public static SensorsMapping OfTier { get; } = new("sensors of a tier",
    [
        ("full-float", SensorKind.TrayFullFloat, "full float",
            "Float at the tray's flood depth; it ends a fill and protects nothing."),
        ("high-float", SensorKind.TrayHighFloat, "high float",
            "Float above the standpipe, where water never belongs; wet stops the pump."),
        ("tray-level", SensorKind.TrayLevel, "tray level", "Depth of water in the flood tray."),
        ("air-temperature", SensorKind.AirTemperature, "air temperature", "Temperature of the air at the tier."),
        ("air-humidity", SensorKind.AirHumidity, "air humidity", "Relative humidity of the air at the tier."),
        ("light-level", SensorKind.LightLevel, "light level",
            "Illuminance at the tier's canopy; it tells of a light that is dark though told on, or lit though told off."),
    ]);

    public static SensorsMapping OfCircuit { get; } = new("sensors of a circuit",
    [
        ("supply-sense", SensorKind.SupplySense, "supply sense", "A contact that tells whether the circuit has its supply."),
        ("current", SensorKind.CircuitCurrent, "current", "The current that the circuit carries."),
    ]);

    /// <summary>What a sensor of a kind is called within its rack, tier or circuit.</summary>
    /// <param name="kind">The kind.</param>
    public static string NameOf(SensorKind kind) =>
        OfRack.sensors.Concat(OfTier.sensors).Concat(OfCircuit.sensors).First(sensor => sensor.Kind == kind).Name;

    /// <inheritdoc/>
    public override string Name { get; }

    /// <inheritdoc/>
    public override string Doc => $"The {Name}, each only where fitted.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [.. sensorKeys];

    /// <inheritdoc/>
    protected override bool BuildsFromParts => true;

    /// <inheritdoc/>
    protected override SensorsPart? Build(MappingReader keys) =>
        new([.. sensorKeys.Where(keys.Has).Select(keys.Get).Where(sensor => sensor.IsFitted)], !sensorKeys.Any(keys.WasRefused));
}
