using RackController.Model;

namespace RackController.Plant;

/// <summary>Every fault that was injected, and which of them act.</summary>
internal sealed class FaultSchedule
{
    private readonly List<ScheduledFault> entries = [];

    /// <summary>Adds a fault.</summary>
    public void Add(Fault fault) => entries.Add(new ScheduledFault(fault));

    /// <summary>The next beginning or end.</summary>
    public MonotonicTime NextChange
    {
        get
        {
            var next = MonotonicTime.Never;
            foreach (var entry in entries)
            {
                next = MonotonicTime.Earlier(next, entry.Due);
            }

            return next;
        }
    }

    /// <summary>A fault whose beginning or end is due; null when none is.</summary>
    /// <param name="now">The time now.</param>
    public ScheduledFault? DueAt(MonotonicTime now)
    {
        foreach (var entry in entries)
        {
            if (entry.Due <= now)
            {
                return entry;
            }
        }

        return null;
    }

    /// <summary>How many faults there are; those that act are found by <see cref="Acting"/>.</summary>
    public int Count => entries.Count;

    /// <summary>A fault, if it acts; null if it does not.</summary>
    /// <param name="index">From 0.</param>
    public Fault? Acting(int index) => entries[index].Acts ? entries[index].Fault : null;
}
