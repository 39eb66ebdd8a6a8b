using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>The last reading of a sensor that was judged, kept so that most scans need not judge it again: once it is settled,
/// the same value from a sensor that still speaks changes nothing.</summary>
/// <param name="staleAfter">How old a reading may become.</param>
internal struct SettledReading(Duration staleAfter)
{
    private readonly long staleAfterNanoseconds = staleAfter.ToInt64Nanoseconds();
    private double value;
    private bool isSettled;

    /// <summary>Whether a good and fresh reading says what the settled one said.</summary>
    public readonly bool IsRepeatedBy(in Reading reading, MonotonicTime now)
    {
        var ageNanoseconds = now.Nanoseconds - reading.TakenAt.Nanoseconds;
        return isSettled && reading.Value == value && reading.Quality == ReadingQuality.Good
            && ageNanoseconds >= 0 && ageNanoseconds <= staleAfterNanoseconds;
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
}
