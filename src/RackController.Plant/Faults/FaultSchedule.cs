using RackController.Model;

namespace RackController.Plant;

/// <summary>Every fault that was injected, and which of them act.</summary>
internal sealed class FaultSchedule
{
    private readonly List<ScheduledFault> entries = [];

    /// <summary>Adds a fault.</summary>
    public void Add(Fault fault)
    {
        entries.Add(new ScheduledFault(fault));
        NextChange = MonotonicTime.Earlier(NextChange, fault.From);
    }

    /// <summary>The next beginning or end.</summary>
    public MonotonicTime NextChange { get; private set; } = MonotonicTime.Never;

    /// <summary>Begins or ends a fault whose time has come.</summary>
    /// <param name="now">The time now.</param>
    /// <param name="begins">Whether it now acts.</param>
    /// <returns>The fault; null when none is due.</returns>
    public Fault? Turn(MonotonicTime now, out bool begins)
    {
        begins = false;
        if (NextChange > now)
        {
            return null;
        }

        var due = entries[0];
        for (var index = 1; due.Due > now; index++)
        {
            due = entries[index];
        }

        begins = due.Next();
        NextChange = MonotonicTime.Never;
        foreach (var entry in entries)
        {
            NextChange = MonotonicTime.Earlier(NextChange, entry.Due);
        }

        return due.Fault;
    }

    /// <summary>How many faults there are; those that act are found by <see cref="Acting"/>.</summary>
    public int Count => entries.Count;

    /// <summary>A fault, if it acts; null if it does not.</summary>
    /// <param name="index">From 0.</param>
    public Fault? Acting(int index) => entries[index].Acts ? entries[index].Fault : null;
}
