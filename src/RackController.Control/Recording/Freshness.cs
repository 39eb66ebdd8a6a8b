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

/// <summary>Tells how fresh a reading is.</summary>
internal static class Fresh
{
    /// <summary>How fresh a reading is at a scan.</summary>
    public static Freshness At(in Reading reading, MonotonicTime now, Duration staleAfter) =>
        reading.TakenAt > now ? Freshness.Future
        : reading.TakenAt.Nanoseconds < now.Nanoseconds - staleAfter.ToInt64Nanoseconds() ? Freshness.Stale
        : Freshness.Fresh;
}
