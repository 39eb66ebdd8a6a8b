using NodaTime;

namespace RackController.Model;

/// <summary>
/// A reading of a clock that only ever goes forward, counted from an arbitrary start such as the boot of the board.
/// It is not a date and cannot become one: interlock timers accept only this type, so a step of the wall clock can
/// neither lengthen a pump run nor shorten a quiet period.
/// </summary>
/// <param name="Nanoseconds">Time since the clock's arbitrary start, in nanoseconds.</param>
public readonly record struct MonotonicTime(long Nanoseconds) : IComparable<MonotonicTime>
{
    /// <summary>The start of the clock.</summary>
    public static MonotonicTime Zero => new(0);

    /// <summary>Later than any moment a rack will see: the due time of something that is not due.</summary>
    public static MonotonicTime Never => new(long.MaxValue);

    /// <summary>The time that lies a number of whole milliseconds after the start of the clock.</summary>
    /// <param name="milliseconds">Milliseconds since the start of the clock.</param>
    public static MonotonicTime FromMilliseconds(long milliseconds) => new(milliseconds * 1_000_000);

    /// <summary>The earlier of two times.</summary>
    /// <param name="a">One time.</param>
    /// <param name="b">The other time.</param>
    public static MonotonicTime Earlier(MonotonicTime a, MonotonicTime b) => a.Nanoseconds <= b.Nanoseconds ? a : b;

    /// <summary>The later of two times.</summary>
    /// <param name="a">One time.</param>
    /// <param name="b">The other time.</param>
    public static MonotonicTime Later(MonotonicTime a, MonotonicTime b) => a.Nanoseconds >= b.Nanoseconds ? a : b;

    /// <summary>The time that lies <paramref name="later"/> after <paramref name="time"/>; <see cref="Never"/> stays never.</summary>
    /// <param name="time">Where to start.</param>
    /// <param name="later">How much later; may be negative.</param>
    public static MonotonicTime operator +(MonotonicTime time, Duration later) =>
        time == Never ? Never : new(time.Nanoseconds + later.ToInt64Nanoseconds());

    /// <summary>How much time passed from <paramref name="earlier"/> to <paramref name="later"/>.</summary>
    /// <param name="later">The end.</param>
    /// <param name="earlier">The start.</param>
    public static Duration operator -(MonotonicTime later, MonotonicTime earlier) =>
        Duration.FromNanoseconds(later.Nanoseconds - earlier.Nanoseconds);

    /// <summary>Whether <paramref name="a"/> is before <paramref name="b"/>.</summary>
    /// <param name="a">One time.</param>
    /// <param name="b">The other time.</param>
    public static bool operator <(MonotonicTime a, MonotonicTime b) => a.Nanoseconds < b.Nanoseconds;

    /// <summary>Whether <paramref name="a"/> is after <paramref name="b"/>.</summary>
    /// <param name="a">One time.</param>
    /// <param name="b">The other time.</param>
    public static bool operator >(MonotonicTime a, MonotonicTime b) => a.Nanoseconds > b.Nanoseconds;

    /// <summary>Whether <paramref name="a"/> is not after <paramref name="b"/>.</summary>
    /// <param name="a">One time.</param>
    /// <param name="b">The other time.</param>
    public static bool operator <=(MonotonicTime a, MonotonicTime b) => a.Nanoseconds <= b.Nanoseconds;

    /// <summary>Whether <paramref name="a"/> is not before <paramref name="b"/>.</summary>
    /// <param name="a">One time.</param>
    /// <param name="b">The other time.</param>
    public static bool operator >=(MonotonicTime a, MonotonicTime b) => a.Nanoseconds >= b.Nanoseconds;

    /// <inheritdoc/>
    public int CompareTo(MonotonicTime other) => Nanoseconds.CompareTo(other.Nanoseconds);
}
