using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Says what the sensors said, from what is on record. Between two notes a sensor goes on saying the same value, as old as it was then;
/// one that had fallen silent stays so. Where that differs from what it really said, Control makes the same of it.
/// </summary>
/// <param name="site">The site that was driven.</param>
public sealed class ReadingsOnRecord(Site site)
{
    private readonly Reading?[] noted = new Reading?[site.Sensors.Length];
    private readonly MonotonicTime[] notedAt = new MonotonicTime[site.Sensors.Length];

    /// <summary>Takes what is noted of a sensor at a moment.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="reading">What is noted.</param>
    /// <param name="at">When.</param>
    public void Take(SensorId sensor, Reading reading, MonotonicTime at)
    {
        noted[sensor.Index] = reading;
        notedAt[sensor.Index] = at;
    }

    /// <summary>What a sensor said at a moment.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="now">The moment, not before what was noted last.</param>
    public Reading At(SensorId sensor, MonotonicTime now) => noted[sensor.Index] is { } reading
        ? Fresh.Held(reading, notedAt[sensor.Index], now, site[sensor].StaleAfter)
        : default;
}
