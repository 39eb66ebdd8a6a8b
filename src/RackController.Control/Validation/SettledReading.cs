using RackController.Model;

namespace RackController.Control;

/// <summary>The last reading of a sensor that was judged, kept so that most scans need not judge it again: once it is settled,
/// the same value from a sensor that still speaks changes nothing, and another plausible one of a measuring sensor only that.</summary>
/// <param name="sensor">The sensor.</param>
internal struct SettledReading(Sensor sensor)
{
    private readonly long staleAfterNanoseconds = sensor.StaleAfter.ToInt64Nanoseconds();
    private readonly double plausibleMin = sensor.PlausibleMin;
    private readonly double plausibleMax = sensor.PlausibleMax;
    private readonly bool isContact = sensor.IsContact;
    private double value;
    private bool isSettled;

    /// <summary>Whether a good and fresh reading says what the settled one said.</summary>
    public readonly bool IsRepeatedBy(in Reading reading, MonotonicTime now) =>
        reading.Value == value && isSettled && IsGoodAndFresh(reading, now);

    /// <summary>Takes the reading of a measuring sensor that is settled and merely says another plausible value.</summary>
    /// <returns>Whether it is one.</returns>
    public bool TryMoveTo(in Reading reading, MonotonicTime now)
    {
        if (isContact || !isSettled || !IsGoodAndFresh(reading, now)
            || !(reading.Value >= plausibleMin && reading.Value <= plausibleMax))
        {
            return false;
        }

        value = reading.Value;
        return true;
    }

    /// <summary>When a reading will be too old.</summary>
    public readonly MonotonicTime GrowsStaleAt(in Reading reading) => new(reading.TakenAt.Nanoseconds + staleAfterNanoseconds);

    /// <summary>A reading was judged.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="settles">Whether the same again would change nothing.</param>
    public void Take(in Reading reading, bool settles)
    {
        value = reading.Value;
        isSettled = settles;
    }

    private readonly bool IsGoodAndFresh(in Reading reading, MonotonicTime now)
    {
        // Not by its age: that of a time that is nonsense may be too long for any number.
        var oldest = now.Nanoseconds - staleAfterNanoseconds;
        return reading.Quality == ReadingQuality.Good && reading.TakenAt.Nanoseconds >= oldest && reading.TakenAt <= now;
    }
}
