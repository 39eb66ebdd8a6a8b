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
    /// <summary>How often the time is due to be remembered. A board without a clock of its own begins again from there, so
    /// this bounds how far light and floods fall back with every power cut, besides the length of the cut itself; and a
    /// board that is cut off again and again still comes to its next flood.</summary>
    public static readonly Duration RememberedEvery = Duration.FromMinutes(10);

    private readonly string key;
    private MonotonicTime at;
    private MonotonicTime nextRemembered;

    public ScheduleClock(string key, MemoryReader memory, Moment start, Func<Instant> photoperiodStart)
    {
        this.key = key;
        at = start.Monotonic;
        nextRemembered = at + RememberedEvery;
        IsTrusted = start.WallTrusted;
        Now = memory.WallTime(key) is { } known ? known
            : start.WallTrusted ? start.Wall
            : photoperiodStart();
    }

    /// <summary>The time by the schedule, as of the last look.</summary>
    public Instant Now { get; private set; }

    /// <summary>Whether that is the wall clock, and the wall clock is trusted.</summary>
    public bool IsTrusted { get; private set; }

    /// <summary>How far the time jumped at this scan, beyond the monotonic time that passed.</summary>
    public Duration Step { get; private set; }

    /// <summary>Rises when the time is due to be remembered.</summary>
    public long Version { get; private set; }

    public void Update(in Moment now, Agenda agenda)
    {
        var expected = Now + (now.Monotonic - at);
        Now = now.WallTrusted ? now.Wall : expected;
        Step = Now - expected;
        at = now.Monotonic;
        IsTrusted = now.WallTrusted;
        if (at >= nextRemembered)
        {
            Version++;
            nextRemembered = at + RememberedEvery;
        }

        agenda.AddForAnyScan(nextRemembered);
    }

    /// <summary>When a time by the schedule comes, as long as the clock does not step.</summary>
    public MonotonicTime Comes(Instant time) => time == Instant.MaxValue ? MonotonicTime.Never : at + (time - Now);

    /// <summary>What the schedule's time will be at a monotonic time.</summary>
    public Instant TimeAt(MonotonicTime time) => Now + (time - at);

    public void Save(MemoryWriter writer) => writer.Put(key, TimeAt(writer.Now));
}
