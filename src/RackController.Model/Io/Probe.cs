using System.Collections.Immutable;

namespace RackController.Model;

/// <summary>How a sensor that measures a value is read on a board. Sensors without one stay missing.</summary>
/// <param name="Sensor">The sensor.</param>
public abstract record Probe(SensorId Sensor);

/// <summary>A thermometer on the kernel's 1-wire bus.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Code">Its name there: the family in two hexadecimal digits, a hyphen and the serial number in twelve, such as
/// <c>28-0316a2794bff</c>.</param>
public sealed record OneWireProbe(SensorId Sensor, string Code) : Probe(Sensor);

/// <summary>Temperature or humidity of the air, as a part on an I2C bus measures it.</summary>
/// <param name="Sensor">The sensor; its kind says which of the two.</param>
/// <param name="Part">The part.</param>
public sealed record AirProbe(SensorId Sensor, BusPart Part) : Probe(Sensor);

/// <summary>A voltage on an input of a converter, which stands for what is measured. Of a current it is the effective value of what
/// alternates.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Part">The converter.</param>
/// <param name="Input">Its input: 0 to 3.</param>
/// <param name="Points">Voltages with what they stand for, at least two, in rising order of voltage. Between and beyond them a straight
/// line holds.</param>
public sealed record AnalogueProbe(SensorId Sensor, BusPart Part, int Input, ImmutableArray<CalibrationPoint> Points) : Probe(Sensor);

/// <summary>What a voltage stands for.</summary>
/// <param name="VoltageV">The voltage, V.</param>
/// <param name="Value">What it stands for, in the unit of the sensor's kind.</param>
public sealed record CalibrationPoint(double VoltageV, double Value);

/// <summary>A part on an I2C bus.</summary>
/// <param name="Name">What the rack file calls it.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Bus">Number of the bus: <c>/dev/i2c-1</c> is 1.</param>
/// <param name="Address">Its address on the bus, 7 bits: 0x08 to 0x77.</param>
public sealed record BusPart(string Name, BusPartKind Kind, int Bus, int Address);

/// <summary>The parts that can be read.</summary>
public enum BusPartKind
{
    /// <summary>SHT30, SHT31 or SHT35: temperature and humidity of the air, each with a check sum.</summary>
    Sht3x,

    /// <summary>BME280: temperature and humidity of the air.</summary>
    Bme280,

    /// <summary>ADS1115: a converter of 16 bits with four inputs.</summary>
    Ads1115,
}

/// <summary>What follows from which part it is.</summary>
public static class BusPartKinds
{
    /// <summary>Whether it measures voltages.</summary>
    /// <param name="kind">The part.</param>
    public static bool IsConverter(this BusPartKind kind) => kind == BusPartKind.Ads1115;

    /// <summary>The address that it has where nothing was soldered or bridged, by its data sheet (from memory).</summary>
    /// <param name="kind">The part.</param>
    public static int UsualAddress(this BusPartKind kind) => kind switch
    {
        BusPartKind.Sht3x => 0x44,
        BusPartKind.Bme280 => 0x76,
        BusPartKind.Ads1115 => 0x48,
        _ => throw new InvariantBrokenException($"every part has its usual address, {kind} too"),
    };
}
