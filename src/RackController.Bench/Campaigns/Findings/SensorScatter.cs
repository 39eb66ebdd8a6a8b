using RackController.Model;

namespace RackController.Bench;

/// <summary>How much a kind of sensor scatters when nothing is wrong with it.</summary>
/// <param name="StandardDeviation">In the unit of its kind.</param>
/// <param name="Source">Where that is from.</param>
public sealed record SensorScatter(double StandardDeviation, string Source)
{
    /// <summary>The scatter of a kind: the stated error of a usual sensor taken as two standard deviations of noise, which is
    /// harsher than it is, since most of such an error is constant. Null for contacts.</summary>
    /// <param name="kind">The kind.</param>
    public static SensorScatter? Of(SensorKind kind) => kind switch
    {
        SensorKind.ReservoirLevel or SensorKind.TrayLevel => new(
            1.25, "data sheets of submersible level probes: 0.5 % of a span of 500 mm, from memory"),
        SensorKind.PumpFlow => new(0.75, "data sheets of turbine flow sensors: 5 % at 30 L/min, from memory"),
        SensorKind.CircuitCurrent => new(0.01, "data sheets of meters of energy: a thousandth of a range of 20 A, from memory"),
        SensorKind.PumpCurrent => new(0.025, "data sheets of Hall current sensors: 1 % of a span of 5 A, from memory"),
        SensorKind.WaterTemperature => new(0.25, "data sheets of digital thermometers on one wire: 0.5 K, from memory"),
        SensorKind.AirTemperature => new(0.15, "data sheets of digital humidity sensors: 0.3 K, from memory"),
        SensorKind.AirHumidity => new(1, "data sheets of digital humidity sensors: 2 %, from memory"),
        // The 20 % of their data sheets is a gain that stays, and in the dark there is nothing to scatter.
        SensorKind.LightLevel => new(50, "1 % at 10 000 lx: common practice, no source"),
        _ => null,
    };
}
