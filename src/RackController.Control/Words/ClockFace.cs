using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Reads a monotonic time off the wall, as it hangs now, for people: nothing is decided by it.</summary>
internal readonly struct ClockFace(Moment now, DateTimeZone zone)
{
    /// <summary>The time that it shows.</summary>
    public MonotonicTime Now => now.Monotonic;

    /// <summary>The local time of day of a monotonic time: <c>13:05:10</c>, with the date where it is another day.</summary>
    public string At(MonotonicTime time)
    {
        var local = (now.Wall + (time - now.Monotonic)).InZone(zone);
        var today = now.Wall.InZone(zone).Date;
        return local.Date == today
            ? local.ToString("HH:mm:ss", null)
            : local.ToString("ddd d MMM HH:mm:ss", null);
    }
}
