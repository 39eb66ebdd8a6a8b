using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>Real time: the board's own clocks.</summary>
/// <param name="trust">Who says whether the wall clock may be believed.</param>
internal sealed class HostClock(IWallTrust trust) : IScanClock
{
    private readonly WakeableSleep sleep = new();
    private readonly SteadyWall steadyWall = new();

    /// <summary>The monotonic clock of the host, which also counts while the board is suspended.</summary>
    public static MonotonicTime MonotonicNow()
    {
        var time = Read(LibC.ClockBootTime);
        return new MonotonicTime(time.Seconds * 1_000_000_000 + time.Nanoseconds);
    }

    public Moment Now()
    {
        var monotonic = MonotonicNow();
        var time = Read(LibC.ClockRealTime);
        var wall = steadyWall.At(monotonic, Instant.FromUnixTimeSeconds(time.Seconds).PlusNanoseconds(time.Nanoseconds));
        return new Moment(monotonic, wall, trust.IsTrusted(wall));
    }

    private static LibC.TimeSpec Read(int clock)
    {
        var answer = LibC.ClockGetTime(clock, out var time);
        Invariant.Holds(answer == 0, "the kernel always has a wall clock and a boot-time clock");
        return time;
    }

    public void SleepUntil(MonotonicTime due) => sleep.Sleep(due.Nanoseconds - MonotonicNow().Nanoseconds);

    public void Wake() => sleep.Wake();

    public void Dispose() => sleep.Dispose();
}
