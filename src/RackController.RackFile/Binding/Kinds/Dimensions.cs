using System.Collections.Immutable;
using UnitsNet;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>The quantities that the files know. Conversions are UnitsNet's; 1 US gal is 3.785411784 L, 1 in 25.4 mm.</summary>
public static class Dimensions
{
    /// <summary>Base unit mm.</summary>
    public static Dimension Length { get; } = new("a length", "45 mm",
    [
        new("mm", value => UnitsNet.Length.FromMillimeters(value).Millimeters),
        new("cm", value => UnitsNet.Length.FromCentimeters(value).Millimeters),
        new("m", value => UnitsNet.Length.FromMeters(value).Millimeters),
        new("in", value => UnitsNet.Length.FromInches(value).Millimeters),
        new("ft", value => UnitsNet.Length.FromFeet(value).Millimeters),
    ]);

    /// <summary>Base unit L.</summary>
    public static Dimension Volume { get; } = new("a volume", "160 L",
    [
        new("L", value => UnitsNet.Volume.FromLiters(value).Liters),
        new("l", value => UnitsNet.Volume.FromLiters(value).Liters, false),
        new("gal", value => UnitsNet.Volume.FromUsGallons(value).Liters),
    ]);

    /// <summary>Base unit L/min.</summary>
    public static Dimension Flow { get; } = new("a flow", "30 L/min",
    [
        new("L/min", value => VolumeFlow.FromLitersPerMinute(value).LitersPerMinute),
        new("l/min", value => VolumeFlow.FromLitersPerMinute(value).LitersPerMinute, false),
        new("L/h", value => VolumeFlow.FromLitersPerHour(value).LitersPerMinute),
        new("l/h", value => VolumeFlow.FromLitersPerHour(value).LitersPerMinute, false),
        new("gal/min", value => VolumeFlow.FromUsGallonsPerMinute(value).LitersPerMinute),
        new("gal/h", value => VolumeFlow.FromUsGallonsPerHour(value).LitersPerMinute),
    ]);

    /// <summary>Base unit W: real power.</summary>
    public static Dimension Power { get; } = new("a power", "45 W",
    [
        new("W", value => (double)UnitsNet.Power.FromWatts(value).Watts),
        new("kW", value => (double)UnitsNet.Power.FromKilowatts(value).Watts),
    ]);

    /// <summary>Base unit A.</summary>
    public static Dimension Current { get; } = new("a current", "6.5 A",
    [
        new("A", value => ElectricCurrent.FromAmperes(value).Amperes),
        new("mA", value => ElectricCurrent.FromMilliamperes(value).Amperes),
    ]);

    /// <summary>Base unit V.</summary>
    public static Dimension Voltage { get; } = new("a voltage", "230 V",
    [
        new("V", value => ElectricPotential.FromVolts(value).Volts),
    ]);

    /// <summary>Base unit degree Celsius.</summary>
    public static Dimension Temperature { get; } = new("a temperature", "26 °C",
    [
        new("°C", value => UnitsNet.Temperature.FromDegreesCelsius(value).DegreesCelsius),
        new("C", value => UnitsNet.Temperature.FromDegreesCelsius(value).DegreesCelsius, false),
        new("°F", value => UnitsNet.Temperature.FromDegreesFahrenheit(value).DegreesCelsius),
        new("F", value => UnitsNet.Temperature.FromDegreesFahrenheit(value).DegreesCelsius, false),
    ]);

    /// <summary>Base unit kelvin: a difference of temperatures, where 1 °C is 1 K and 1 °F is 5/9 K.</summary>
    public static Dimension TemperatureDifference { get; } = new("a temperature difference", "2 °C",
    [
        new("°C", value => TemperatureDelta.FromDegreesCelsius(value).Kelvins),
        new("C", value => TemperatureDelta.FromDegreesCelsius(value).Kelvins, false),
        new("K", value => TemperatureDelta.FromKelvins(value).Kelvins),
        new("°F", value => TemperatureDelta.FromDegreesFahrenheit(value).Kelvins),
        new("F", value => TemperatureDelta.FromDegreesFahrenheit(value).Kelvins, false),
    ]);

    /// <summary>Base unit %.</summary>
    public static Dimension Percentage { get; } = new("a percentage", "65 %",
    [
        new("%", value => Ratio.FromPercent(value).Percent),
    ]);

    /// <summary>Base unit umol/m2/s: photosynthetic photon flux density.</summary>
    public static Dimension PhotonFlux { get; } = new("a photon flux density", "180 umol/m2/s",
    [
        new("umol/m2/s", value => value),
        new("µmol/m²/s", value => value, false),
        new("μmol/m²/s", value => value, false),
    ]);

    /// <summary>Base unit s. Read into durations by <see cref="DurationKind"/>.</summary>
    public static Dimension Time { get; } = new("a duration", "1 h 30 min",
    [
        new("h", value => value * 3600),
        new("min", value => value * 60),
        new("s", value => value),
        new("ms", value => value / 1000),
        new("d", value => value * 86_400),
    ]);

    /// <summary>Base unit kg.</summary>
    public static Dimension Mass { get; } = new("a mass", "70 kg",
    [
        new("kg", value => UnitsNet.Mass.FromKilograms(value).Kilograms),
        new("g", value => UnitsNet.Mass.FromGrams(value).Kilograms),
        new("lb", value => UnitsNet.Mass.FromPounds(value).Kilograms),
        new("oz", value => UnitsNet.Mass.FromOunces(value).Kilograms),
    ]);

    private static Dimension Pressure { get; } = new("a pressure", "2 kPa",
    [
        new("Pa", value => value), new("kPa", value => value), new("bar", value => value), new("psi", value => value),
    ]);

    private static ImmutableArray<Dimension> All { get; } =
    [
        Length, Volume, Flow, Power, Current, Voltage, Temperature, TemperatureDifference, Percentage, PhotonFlux, Time, Mass,
        Pressure,
    ];

    /// <summary>What a unit measures, in words, or null for an unknown unit.</summary>
    /// <param name="unit">The unit as written.</param>
    public static string? NounOf(string unit) => All.FirstOrDefault(one => one.Find(unit) is not null)?.Noun;
}
