using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// A clock that runs a number of times faster than real time, for showing a simulated rack. It steps exactly from one
/// due time to the next and lets its own time lag when the machine cannot keep up, so that a busy machine never looks like
/// a late scan. Its wall clock is trusted, since it is made up; when somebody sets the host's, it steps by as much, so that a clock
/// that is set can be watched at any speed.
/// </summary>
internal sealed class FastClock : IScanClock
{
    /// <summary>How far real time may run ahead before the lag is written off, 50 ms.</summary>
    private const long MostCatchUpNs = 50_000_000;

    /// <summary>The host's wall clock also drifts against its monotonic one, which is no step.</summary>
    private static readonly Duration LeastStep = Duration.FromSeconds(1);

    private readonly double speed;
    private readonly WakeableSleep sleep = new();
    private readonly Lock gate = new();
    private Moment moment;
    private long anchorNs;
    private Duration hostOffset;

    /// <summary>Starts the clock.</summary>
    /// <param name="start">What its wall clock says at first.</param>
    /// <param name="speed">How many times faster than real time, above 0.</param>
    public FastClock(Instant start, double speed)
    {
        this.speed = speed;
        var real = HostClock.MonotonicNow();
        moment = new Moment(real, start, WallTrusted: true);
        anchorNs = real.Nanoseconds;
        hostOffset = HostOffset();
    }

    public Moment Now()
    {
        lock (gate)
        {
            return moment;
        }
    }

    public void SleepUntil(MonotonicTime due)
    {
        var aheadNs = due.Nanoseconds - moment.Monotonic.Nanoseconds;
        var realDueNs = anchorNs + (long)(aheadNs / speed);
        sleep.Sleep(realDueNs - HostClock.MonotonicNow().Nanoseconds);

        var realNs = HostClock.MonotonicNow().Nanoseconds;
        var wokenEarly = realNs < realDueNs;
        Advance(wokenEarly ? (long)((realNs - anchorNs) * speed) : aheadNs);
        anchorNs = wokenEarly ? realNs : Math.Max(realDueNs, realNs - MostCatchUpNs);
    }

    public void Wake() => sleep.Wake();

    public void Dispose() => sleep.Dispose();

    private void Advance(long nanoseconds)
    {
        var by = Duration.FromNanoseconds(Math.Max(1, nanoseconds));
        var step = StepOfHost();
        lock (gate)
        {
            moment = moment with { Monotonic = moment.Monotonic + by, Wall = moment.Wall + by + step };
        }
    }

    private Duration StepOfHost()
    {
        var offset = HostOffset();
        var step = offset - hostOffset;
        if (step < LeastStep && step > -LeastStep)
        {
            return Duration.Zero;
        }

        hostOffset = offset;
        return step;
    }

    private static Duration HostOffset() =>
        SystemClock.Instance.GetCurrentInstant() - NodaConstants.UnixEpoch - (HostClock.MonotonicNow() - MonotonicTime.Zero);
}
