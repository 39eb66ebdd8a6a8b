namespace RackController.Model;

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

    /// <summary>BH1750: illuminance.</summary>
    Bh1750,

    /// <summary>ADS1115: a converter of 16 bits with four inputs.</summary>
    Ads1115,

    /// <summary>MCP23017: sixteen lines for relays.</summary>
    Mcp23017,

    /// <summary>PCF8574: eight lines for relays.</summary>
    Pcf8574,
}

/// <summary>What follows from which part it is.</summary>
public static class BusPartKinds
{
    /// <summary>Whether it measures voltages.</summary>
    /// <param name="kind">The part.</param>
    public static bool IsConverter(this BusPartKind kind) => kind == BusPartKind.Ads1115;

    /// <summary>Whether it measures a quantity by itself.</summary>
    /// <param name="kind">The part.</param>
    /// <param name="quantity">The quantity.</param>
    public static bool Measures(this BusPartKind kind, SensorKind quantity) => quantity switch
    {
        SensorKind.AirTemperature or SensorKind.AirHumidity => kind is BusPartKind.Sht3x or BusPartKind.Bme280,
        SensorKind.LightLevel => kind == BusPartKind.Bh1750,
        _ => false,
    };

    /// <summary>How many lines it has for relays; 0 for a part that has none.</summary>
    /// <param name="kind">The part.</param>
    public static int RelayLines(this BusPartKind kind) => kind switch
    {
        BusPartKind.Mcp23017 => 16,
        BusPartKind.Pcf8574 => 8,
        _ => 0,
    };

    /// <summary>Whether its lines are high from the moment it has power, before anybody told it a thing (data sheets, from memory). Others
    /// leave theirs to pull and wiring until then.</summary>
    /// <param name="kind">The part.</param>
    public static bool IsHighAtPowerOn(this BusPartKind kind) => kind == BusPartKind.Pcf8574;

    /// <summary>The address that it has where nothing was soldered or bridged, by its data sheet (from memory).</summary>
    /// <param name="kind">The part.</param>
    public static int UsualAddress(this BusPartKind kind) => kind switch
    {
        BusPartKind.Sht3x => 0x44,
        BusPartKind.Bme280 => 0x76,
        BusPartKind.Bh1750 => 0x23,
        BusPartKind.Ads1115 => 0x48,
        BusPartKind.Mcp23017 or BusPartKind.Pcf8574 => 0x20,
        _ => throw new InvariantBrokenException($"every part has its usual address, {kind} too"),
    };
}
