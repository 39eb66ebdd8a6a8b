using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// The time that schedules read. While the wall clock is trusted it is the wall clock. While it is not, it is the last time
/// known plus the monotonic time since; across a restart the time away is unknown and taken as none. When nothing was
/// ever known it begins at the start of a photoperiod: light comes first, and lasts its proper length.
/// </summary>
internal sealed class ScheduleClock
{
    private readonly string key;
    private MonotonicTime at;

    public ScheduleClock(string key, MemoryReader memory, Moment start, Func<Instant> photoperiodStart)
    {
        this.key = key;
        at = start.Monotonic;
        IsTrusted = start.WallTrusted;
        Now = memory.WallTime(key) is { } known ? known + memory.Away
            : start.WallTrusted ? start.Wall
            : photoperiodStart();
    }

    /// <summary>The time by the schedule.</summary>
    public Instant Now { get; private set; }

    /// <summary>Whether that is the wall clock, and the wall clock is trusted.</summary>
    public bool IsTrusted { get; private set; }

    /// <summary>How far the time jumped at this scan, beyond the monotonic time that passed.</summary>
    public Duration Step { get; private set; }

    public void Update(in Moment now)
    {
        var expected = Now + (now.Monotonic - at);
        Now = now.WallTrusted ? now.Wall : expected;
        Step = Now - expected;
        at = now.Monotonic;
        IsTrusted = now.WallTrusted;
    }

    /// <summary>When a time by the schedule comes, as long as the clock does not step.</summary>
    public MonotonicTime Comes(Instant time) => time == Instant.MaxValue ? MonotonicTime.Never : at + (time - Now);

    /// <summary>What the schedule's time will be at a monotonic time.</summary>
    public Instant TimeAt(MonotonicTime time) => Now + (time - at);

    public void Save(MemoryWriter writer) => writer.Put(key, Now);
}
