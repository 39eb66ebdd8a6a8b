namespace RackController.Model;

/// <summary>What the source of a reading says of it. Whether it may be believed is for the scan to judge.</summary>
public enum ReadingQuality
{
    /// <summary>Nothing was read yet.</summary>
    Missing,

    /// <summary>Read without complaint.</summary>
    Good,

    /// <summary>The sensor or its bus reported an error, such as a check sum that does not match.</summary>
    Corrupt,
}

/// <summary>What one sensor said, when, and how well.</summary>
/// <param name="Value">In the unit of the sensor's kind; 0 or 1 for a contact. Means nothing unless the quality is
/// <see cref="ReadingQuality.Good"/>.</param>
/// <param name="Quality">What the source says of it.</param>
/// <param name="TakenAt">When it was measured, not when it was handed over: its age is counted from here.</param>
public readonly record struct Reading(double Value, ReadingQuality Quality, MonotonicTime TakenAt);

/// <summary>
/// What the sensors of a site say, one <see cref="Reading"/> for each. One instance is filled again for every scan, so
/// that reading allocates nothing; whoever wants to keep one copies it.
/// </summary>
public sealed class Readings
{
    private readonly Reading[] readings;

    /// <summary>Makes room for the sensors of a site, all missing.</summary>
    /// <param name="site">The site whose sensors will be read.</param>
    public Readings(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        readings = new Reading[site.Sensors.Length];
    }

    /// <summary>How many sensors there are.</summary>
    public int Count => readings.Length;

    /// <summary>What one sensor says.</summary>
    /// <param name="sensor">A sensor of the site.</param>
    public ref Reading this[SensorId sensor] => ref readings[sensor.Index];

    /// <summary>Takes over everything that <paramref name="other"/> says.</summary>
    /// <param name="other">Readings of the same site.</param>
    public void CopyFrom(Readings other)
    {
        ArgumentNullException.ThrowIfNull(other);
        other.readings.CopyTo(readings, 0);
    }
}
