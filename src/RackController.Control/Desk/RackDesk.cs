using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>What people have asked of one rack that outlasts the asking: a stop, and hands in the rack.</summary>
internal sealed class RackDesk(Rack rack)
{
    /// <summary>Whether somebody stopped the rack. A restart does not start it again.</summary>
    public bool IsStopped { get; private set; }

    /// <summary>When the service hold ends by itself; null while hands are out of the rack.</summary>
    public MonotonicTime? HoldEndsAt { get; private set; }

    /// <summary>Until when hands may still be in the rack of somebody who has just let it go; null otherwise.</summary>
    public MonotonicTime? ClearAt { get; private set; }

    /// <summary>Whether hands are in the rack, or may be still.</summary>
    public bool MayHaveHandsIn => HoldEndsAt is not null || ClearAt is not null;

    /// <summary>Counts up whenever something changed that must be remembered.</summary>
    public long MemoryVersion { get; private set; }

    /// <summary>Stops the rack, or lets it follow its schedule again.</summary>
    public void SetStopped(bool stopped)
    {
        IsStopped = stopped;
        MemoryVersion++;
    }

    /// <summary>Begins a service hold, or makes one longer. One that somebody else asked for is never made shorter: two pairs of
    /// hands may be in the rack.</summary>
    /// <returns>How long it will be, which is never longer than the rack allows.</returns>
    public Duration BeginHold(MonotonicTime now, Duration length)
    {
        var end = now + Duration.Min(Duration.Max(length, Duration.Zero), rack.Limits.ServiceHoldMaximum);
        HoldEndsAt = HoldEndsAt is { } before ? MonotonicTime.Later(before, end) : end;
        MemoryVersion++;
        return HoldEndsAt.Value - now;
    }

    /// <summary>Ends the service hold.</summary>
    /// <returns>Whether there was one.</returns>
    public bool EndHold()
    {
        var was = HoldEndsAt is not null;
        HoldEndsAt = null;
        MemoryVersion++;
        return was;
    }

    /// <summary>Somebody has let the rack go, with hands that may still be in it.</summary>
    public void LetGo(MonotonicTime now) => ClearAt = now + rack.Limits.StartDelay;

    /// <summary>Ends a hold whose time is over, and names the end of one that goes on.</summary>
    public void Look(in Moment now, Agenda agenda)
    {
        ClearAt = ClearAt > now.Monotonic ? ClearAt : null;
        agenda.Add(ClearAt ?? MonotonicTime.Never);
        if (HoldEndsAt is not { } end)
        {
            return;
        }

        if (now.Monotonic >= end)
        {
            EndHold();
            return;
        }

        agenda.Add(end);
    }

    public void Save(MemoryWriter memory)
    {
        memory.Put($"{rack.Name}/desk/stopped", IsStopped ? 1 : 0);
        if (HoldEndsAt is { } end)
        {
            memory.PutAge($"{rack.Name}/desk/hold end age", end);
        }
    }

    /// <summary>Takes back what an earlier run remembered. The time away does not shorten a hold: the hands may still be in.</summary>
    public void Restore(MemoryReader memory, Moment start)
    {
        IsStopped = memory.Number($"{rack.Name}/desk/stopped") == 1;
        HoldEndsAt = memory.Length($"{rack.Name}/desk/hold end age") is { } age ? start.Monotonic + -age : null;
    }
}
