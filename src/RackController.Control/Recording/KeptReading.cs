using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>What one sensor said when it was last put on record, and whether what it says now must be put there too.</summary>
/// <param name="sensor">The sensor.</param>
/// <param name="levels">The values at which something may be decided differently, in order.</param>
internal struct KeptReading(Sensor sensor, double[] levels)
{
    private readonly Duration staleAfter = sensor.StaleAfter;
    private readonly bool isContact = sensor.IsContact;
    private Reading kept;
    private MonotonicTime keptAt;
    private Freshness freshness = Freshness.Fresh;

    // The levels that it last lay between; a value on a level lies between it and itself.
    private double low = double.NaN;
    private double high = double.NaN;

    /// <summary>What it says by the record at a moment.</summary>
    public readonly Reading At(MonotonicTime now) => Fresh.Held(kept, keptAt, now, staleAfter);

    /// <summary>Whether Control may make something else of this reading than of the one on record.</summary>
    public readonly bool IsNews(in Reading reading, MonotonicTime now)
    {
        if (reading.Quality != kept.Quality)
        {
            return true;
        }

        if (reading.Quality != ReadingQuality.Good)
        {
            return false;
        }

        var isFresh = Fresh.At(reading, now, staleAfter);
        return isFresh != freshness || (isFresh == Freshness.Fresh && IsNews(reading.Value));
    }

    /// <summary>Whether the record has it that it says another value, or took it at another time.</summary>
    public readonly bool IsOther(in Reading reading, MonotonicTime now) =>
        reading.Quality == ReadingQuality.Good && (!reading.Value.Equals(kept.Value) || reading.TakenAt != At(now).TakenAt);

    /// <summary>Takes a reading that is put on record.</summary>
    public void Keep(in Reading reading, MonotonicTime now)
    {
        (kept, keptAt) = (reading, now);
        freshness = Fresh.At(reading, now, staleAfter);
        (low, high) = double.IsNaN(reading.Value)
            ? (double.NaN, double.NaN)
            : (double.NegativeInfinity, double.PositiveInfinity);
        foreach (var level in levels)
        {
            low = level <= reading.Value ? level : low;
            high = level >= reading.Value && double.IsPositiveInfinity(high) ? level : high;
        }
    }

    private readonly bool IsNews(double value) =>
        isContact ? !value.Equals(kept.Value) : !(value > low && value < high) && !value.Equals(kept.Value);
}
