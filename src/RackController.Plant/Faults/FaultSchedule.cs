using RackController.Model;

namespace RackController.Plant;

/// <summary>Every fault that was injected, and which of them act. It tells each beginning and each end once, in order of time.</summary>
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

    /// <summary>Takes one beginning or end that is due.</summary>
    /// <param name="now">The time now.</param>
    /// <param name="fault">The fault.</param>
    /// <param name="begins">Whether it begins, rather than ends.</param>
    /// <returns>Whether there was one.</returns>
    public bool TakeDue(MonotonicTime now, out Fault fault, out bool begins)
    {
        foreach (var entry in entries)
        {
            if (entry.Due <= now)
            {
                begins = entry.Next();
                fault = entry.Fault;
                return true;
            }
        }

        fault = null!;
        begins = false;
        return false;
    }

    /// <summary>How many faults there are; those that act are found by <see cref="Acting"/>.</summary>
    public int Count => entries.Count;

    /// <summary>A fault, if it acts; null if it does not.</summary>
    /// <param name="index">From 0.</param>
    public Fault? Acting(int index) => entries[index].Acts ? entries[index].Fault : null;
}
