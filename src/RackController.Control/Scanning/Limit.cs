using RackController.Model;

namespace RackController.Control;

/// <summary>
/// A value that the readings of a measuring sensor are compared with. Nothing else can be compared with one, and a limit cannot be
/// made without naming itself among the levels: so whoever is left alone until a level is passed misses no comparison.
/// </summary>
internal sealed class Limit
{
    /// <summary>Makes a limit and names it.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="value">The value, in the sensor's unit.</param>
    /// <param name="levels">Where every level is named.</param>
    public Limit(SensorId sensor, double value, ICollection<SensorLevel> levels)
    {
        Sensor = sensor;
        Value = value;
        levels.Add(new SensorLevel(sensor, value));
    }

    public SensorId Sensor { get; }

    public double Value { get; }
}
