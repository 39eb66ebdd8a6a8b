using NodaTime;

namespace RackController.Model;

/// <summary>What a sensor measures. Contacts read 1 or 0, and the text says which state is 1.</summary>
public enum SensorKind
{
    /// <summary>Float low in the reservoir; 1 while water reaches it.</summary>
    ReservoirLowFloat,

    /// <summary>Float high in the reservoir; 1 while water reaches it.</summary>
    ReservoirFullFloat,

    /// <summary>Depth of water in the reservoir, mm.</summary>
    ReservoirLevel,

    /// <summary>Float at a tray's flood depth; 1 while water reaches it. It ends a fill; it protects nothing.</summary>
    TrayFullFloat,

    /// <summary>Float above a tray's standpipe, where water never belongs; 1 while water reaches it.</summary>
    TrayHighFloat,

    /// <summary>Depth of water in a flood tray, mm.</summary>
    TrayLevel,

    /// <summary>Leak rope in the drip tray, or on the floor where a rack has none; 1 while wet.</summary>
    LeakRope,

    /// <summary>Float in the drip tray, where water lies only after a spill; 1 while water reaches it.</summary>
    DripTrayFloat,

    /// <summary>Whether a circuit has its supply; 1 while present.</summary>
    SupplySense,

    /// <summary>Current that a circuit carries, A.</summary>
    CircuitCurrent,

    /// <summary>Current in the pump's own wire, A.</summary>
    PumpCurrent,

    /// <summary>Flow from the pump, L/min.</summary>
    PumpFlow,

    /// <summary>Temperature of the reservoir's water, degrees Celsius.</summary>
    WaterTemperature,

    /// <summary>Temperature of the air at a rack or tier, degrees Celsius.</summary>
    AirTemperature,

    /// <summary>Relative humidity of the air at a rack or tier, %.</summary>
    AirHumidity,

    /// <summary>Illuminance at a tier's canopy, lx: light as an eye weighs it, from which the photon flux follows by a factor of the
    /// lamp.</summary>
    LightLevel,
}

/// <summary>What follows from what a sensor measures.</summary>
public static class SensorKinds
{
    /// <summary>Whether it is a float, which has a height at which it switches.</summary>
    /// <param name="kind">What the sensor measures.</param>
    public static bool IsFloat(this SensorKind kind) => kind is SensorKind.ReservoirLowFloat or SensorKind.ReservoirFullFloat
        or SensorKind.TrayFullFloat or SensorKind.TrayHighFloat or SensorKind.DripTrayFloat;

    /// <summary>Whether it is a contact that reads 0 or 1, rather than a measured value.</summary>
    /// <param name="kind">What the sensor measures.</param>
    public static bool IsContact(this SensorKind kind) => kind.HarmfulValue() is not null;

    /// <summary>The reading of a contact, 0 or 1, that asks for action and so must be believed fast; null for a measured value.
    /// It is 0 where a contact reports that something needed is there, and 1 where it reports water that ends a flood or should
    /// not be: a float that only ends a fill harms when it is believed full too late.</summary>
    /// <param name="kind">What the sensor measures.</param>
    public static double? HarmfulValue(this SensorKind kind) => kind switch
    {
        SensorKind.ReservoirLowFloat or SensorKind.SupplySense => 0,
        SensorKind.TrayHighFloat or SensorKind.LeakRope or SensorKind.DripTrayFloat or SensorKind.TrayFullFloat
            or SensorKind.ReservoirFullFloat => 1,
        _ => null,
    };
}

/// <summary>
/// One thing that is measured, and when its word may be believed. It says what a reading means; the readings
/// themselves travel in <see cref="Readings"/>.
/// </summary>
public sealed record Sensor
{
    /// <summary>Place in <see cref="Site.Sensors"/>.</summary>
    public required SensorId Id { get; init; }

    /// <summary>Unique on the site, for people: <c>north/reservoir low float</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What it measures.</summary>
    public required SensorKind Kind { get; init; }

    /// <summary>The rack it watches; null when it watches a circuit.</summary>
    public RackId? Rack { get; init; }

    /// <summary>The tier it watches, 1 at the bottom; null when it watches the whole rack or a circuit.</summary>
    public int? TierNumber { get; init; }

    /// <summary>The circuit it watches; null when it watches a rack.</summary>
    public CircuitId? Circuit { get; init; }

    /// <summary>Height of a float's switching point above the floor of its flood tray, drip tray or reservoir, mm; 0 for other
    /// kinds.</summary>
    public double HeightMm { get; init; }

    /// <summary>Lowest value that can be true, in the kind's unit.</summary>
    public required double PlausibleMin { get; init; }

    /// <summary>Highest value that can be true, in the kind's unit.</summary>
    public required double PlausibleMax { get; init; }

    /// <summary>A reading older than this is unknown. Default: 2 s for contacts, 30 s for measured values;
    /// 200 ms to 10 min.</summary>
    public required Duration StaleAfter { get; init; }

    /// <summary>Whether the sensor is a contact that reads 0 or 1, rather than a measured value.</summary>
    public bool IsContact => Kind.IsContact();

    /// <inheritdoc cref="SensorKinds.HarmfulValue(SensorKind)"/>
    public double? HarmfulValue => Kind.HarmfulValue();
}
