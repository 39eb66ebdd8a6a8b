using RackController.Model;

namespace RackController.Plant;

/// <summary>Between the integer nanoseconds that time is kept in and the seconds that rates are written in.</summary>
internal static class PlantTime
{
    private const double NanosecondsPerSecond = 1e9;
    private const double FarS = 1e9;

    /// <summary>Seconds from one time to a later one.</summary>
    public static double Seconds(MonotonicTime from, MonotonicTime to) =>
        (to.Nanoseconds - from.Nanoseconds) / NanosecondsPerSecond;

    /// <summary>The first nanosecond that lies at least so many seconds later; never for what is further than decades.</summary>
    public static MonotonicTime After(MonotonicTime time, double seconds) => seconds < FarS
        ? new MonotonicTime(time.Nanoseconds + (long)Math.Ceiling(seconds * NanosecondsPerSecond))
        : MonotonicTime.Never;
}
