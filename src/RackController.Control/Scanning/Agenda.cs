using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Collects, during one scan, the times at which something could change by itself. Every timer in Control names its next
/// due time here; what is forgotten here would be found late by a bench that leaps.
/// </summary>
internal sealed class Agenda
{
    private Moment now;

    /// <summary>The earliest time named since <see cref="Begin"/>.</summary>
    public MonotonicTime Earliest { get; private set; }

    /// <summary>The earliest time, or that of something that needs no scan of its own.</summary>
    public MonotonicTime EarliestLook { get; private set; }

    /// <summary>Begins a scan with nothing due.</summary>
    public void Begin(in Moment moment)
    {
        now = moment;
        Earliest = MonotonicTime.Never;
        EarliestLook = MonotonicTime.Never;
    }

    /// <summary>Something is due at a monotonic time; one that has passed is due at the next scan.</summary>
    public void Add(MonotonicTime due)
    {
        Earliest = MonotonicTime.Earlier(Earliest, due);
        EarliestLook = MonotonicTime.Earlier(EarliestLook, due);
    }

    /// <summary>Something is to be done at the first scan from a time on, such as remembering the time; nothing is decided
    /// differently by it, so nobody need scan for its sake.</summary>
    public void AddForAnyScan(MonotonicTime due) => EarliestLook = MonotonicTime.Earlier(EarliestLook, due);

    /// <summary>Something may follow at the very next scan.</summary>
    public void AddNextScan() => Add(now.Monotonic);
}
