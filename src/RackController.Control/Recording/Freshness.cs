using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>How the time of a reading lies to that of a scan: all that Control makes of it.</summary>
internal enum Freshness
{
    /// <summary>Young enough to be believed.</summary>
    Fresh,

    /// <summary>Too old.</summary>
    Stale,

    /// <summary>Of a time to come.</summary>
    Future,
}

/// <summary>Tells how fresh a reading is, and how it goes on while nothing else is put on record.</summary>
internal static class Fresh
{
    private static readonly Duration farthest = Duration.FromDays(1);

    /// <summary>How fresh a reading is at a scan.</summary>
    public static Freshness At(in Reading reading, MonotonicTime now, Duration staleAfter) =>
        reading.TakenAt > now ? Freshness.Future
        : reading.TakenAt.Nanoseconds < now.Nanoseconds - staleAfter.ToInt64Nanoseconds() ? Freshness.Stale
        : Freshness.Fresh;

    /// <summary>What a sensor says that goes on as it was: as fresh as it was, and if it had fallen silent still so.</summary>
    /// <param name="reading">What it said.</param>
    /// <param name="since">When it said so, from 0.</param>
    /// <param name="now">A moment not before that.</param>
    /// <param name="staleAfter">When its readings are too old.</param>
    public static Reading Held(in Reading reading, MonotonicTime since, MonotonicTime now, Duration staleAfter) =>
        At(reading, since, staleAfter) switch
        {
            Freshness.Stale => reading,
            Freshness.Future => reading with { TakenAt = now + Duration.Min(farthest, reading.TakenAt - since) },
            _ => reading with { TakenAt = now + -(since - reading.TakenAt) },
        };
}
