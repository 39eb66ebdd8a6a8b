using NodaTime;

namespace RackController.Service;

/// <summary>A span of time by the wall clock. Its beginning belongs to it, its end does not.</summary>
/// <param name="From">Its beginning.</param>
/// <param name="Until">Its end, later than its beginning.</param>
public readonly record struct HistorySpan(Instant From, Instant Until)
{
    /// <summary>How long it is.</summary>
    public Duration Length => Until - From;

    /// <summary>Whether a time lies in it.</summary>
    /// <param name="at">The time.</param>
    public bool Holds(Instant at) => at >= From && at < Until;

    /// <summary>In which stretch a time lies, from 0, where the span is divided into equal ones.</summary>
    /// <param name="at">A time of the span.</param>
    /// <param name="stretches">Into how many, from 1.</param>
    public int StretchOf(Instant at, int stretches) =>
        Math.Min((int)((at - From).TotalTicks / Length.TotalTicks * stretches), stretches - 1);

    /// <summary>When a stretch begins, which is when the one before it ends.</summary>
    /// <param name="stretch">Its place, from 0.</param>
    /// <param name="stretches">How many there are.</param>
    public Instant BeginOf(int stretch, int stretches) => From + Length * stretch / stretches;
}
