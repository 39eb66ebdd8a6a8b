using System.Globalization;
using RackController.Model;

namespace RackController.Service;

/// <summary>What a sensor says, in words and units for people.</summary>
public static class ReadingWords
{
    /// <summary>The value with its unit, or the word for a contact's side; what keeps it from being believed where something
    /// does.</summary>
    /// <param name="status">What the sensor says.</param>
    /// <param name="units">What figures are shown in.</param>
    public static string Words(SensorStatus status, ShownUnits units)
    {
        ArgumentNullException.ThrowIfNull(status);
        return status.Doubt switch
        {
            null => Value(status.Sensor.Kind, status.Reading.Value, units),
            "stale" => $"stale {status.Age.TotalSeconds.ToString("0", CultureInfo.InvariantCulture)} s",
            var doubt => doubt,
        };
    }

    /// <summary>Whether a reading that may be believed tells of something that should not be: water where none belongs, none
    /// where it should be, a supply that is gone.</summary>
    /// <param name="status">What the sensor says.</param>
    public static bool IsAbnormal(SensorStatus status)
    {
        ArgumentNullException.ThrowIfNull(status);
        var closed = status.Reading.Value >= 0.5;
        return status.Doubt is null && status.Sensor.Kind switch
        {
            SensorKind.ReservoirLowFloat or SensorKind.SupplySense => !closed,
            SensorKind.TrayHighFloat or SensorKind.LeakRope or SensorKind.DripTrayFloat => closed,
            _ => false,
        };
    }

    /// <summary>A value with its unit, or the word for a contact's side.</summary>
    /// <param name="kind">What the sensor measures.</param>
    /// <param name="value">What it says.</param>
    /// <param name="units">What figures are shown in.</param>
    public static string Value(SensorKind kind, double value, ShownUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return kind switch
        {
            SensorKind.ReservoirLowFloat or SensorKind.ReservoirFullFloat or SensorKind.TrayFullFloat =>
                value >= 0.5 ? "reached" : "not reached",
            SensorKind.TrayHighFloat => value >= 0.5 ? "water too high" : "clear",
            SensorKind.LeakRope or SensorKind.DripTrayFloat => value >= 0.5 ? "wet" : "dry",
            SensorKind.SupplySense => value >= 0.5 ? "present" : "lost",
            SensorKind.CircuitCurrent or SensorKind.PumpCurrent => units.Of(Unit(kind)).Words(value, 2),
            SensorKind.PumpFlow or SensorKind.WaterTemperature or SensorKind.AirTemperature => units.Of(Unit(kind)).Words(value, 1),
            _ => units.Of(Unit(kind)).Words(value, 0),
        };
    }

    /// <summary>The unit that a sensor measures in, whatever it is shown in; empty for a contact.</summary>
    /// <param name="kind">What it measures.</param>
    public static string Unit(SensorKind kind) => kind switch
    {
        SensorKind.ReservoirLevel or SensorKind.TrayLevel => "mm",
        SensorKind.CircuitCurrent or SensorKind.PumpCurrent => "A",
        SensorKind.PumpFlow => "L/min",
        SensorKind.WaterTemperature or SensorKind.AirTemperature => "\u00b0C",
        SensorKind.AirHumidity => "%",
        SensorKind.LightLevel => "lx",
        _ => "",
    };
}
