using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Floods while no clock can be trusted: at the schedule's mean spacing, in monotonic time, from the start of the last
/// flood known; from the first start of the controller when none is. A crop is then watered as often as it should be, if not
/// when.
/// </summary>
internal sealed class SpacedFloods
{
    private readonly string key;
    private MonotonicTime from;
    private MonotonicTime? fromBeforeOwed;

    public SpacedFloods(string key, Duration spacing, MemoryReader memory, MonotonicTime start)
    {
        this.key = key;
        Spacing = spacing;
        from = memory.TimeOf(key) ?? start;
    }

    public Duration Spacing { get; }

    /// <summary>When the next one is due.</summary>
    public MonotonicTime Due => from + Spacing;

    /// <summary>Whether one that came due has not begun.</summary>
    public bool IsOwed => fromBeforeOwed is not null;

    /// <summary>Takes a flood that has come due, if one has. What waits is taken once.</summary>
    public bool TakeDue(MonotonicTime now)
    {
        if (now < Due)
        {
            return false;
        }

        fromBeforeOwed = from;
        from = now;
        return true;
    }

    /// <summary>A flood of any kind begins: the spacing counts from here.</summary>
    public void Began(MonotonicTime now) => from = now;

    /// <summary>Nothing is owed any more.</summary>
    public void Settle() => fromBeforeOwed = null;

    /// <summary>Keeps the spacing; a flood that is owed is found due again after a restart.</summary>
    public void Save(MemoryWriter writer) => writer.PutAge(key, fromBeforeOwed ?? from);
}
