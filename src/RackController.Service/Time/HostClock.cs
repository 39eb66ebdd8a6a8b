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
        var answer = LibC.ClockGetTime(LibC.ClockBootTime, out var time);
        Invariant.Holds(answer == 0, "the kernel always has a boot-time clock");
        return new MonotonicTime(time.Seconds * 1_000_000_000 + time.Nanoseconds);
    }

    public Moment Now()
    {
        var monotonic = MonotonicNow();
        var wall = steadyWall.At(monotonic, SystemClock.Instance.GetCurrentInstant());
        return new Moment(monotonic, wall, trust.IsTrusted(wall));
    }

    public void SleepUntil(MonotonicTime due) => sleep.Sleep(due.Nanoseconds - MonotonicNow().Nanoseconds);

    public void Wake() => sleep.Wake();

    public void Dispose() => sleep.Dispose();
}
