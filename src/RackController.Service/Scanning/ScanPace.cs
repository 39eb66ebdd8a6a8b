using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>When the next scan is due, and how late scans have begun. Due times lie on a fixed grid, so that small delays do
/// not add up; scans that were missed altogether are left out, never made up for.</summary>
internal sealed class ScanPace(ScanTiming timing, MonotonicTime start)
{
    public MonotonicTime NextDue { get; private set; } = start;

    public long Scans { get; private set; }

    public long Slips { get; private set; }

    public Duration WorstLateness { get; private set; }

    /// <summary>How late all scans began.</summary>
    public LatenessTally Lateness { get; } = new();

    /// <summary>How much later than meant the present scan began.</summary>
    public Duration LateBy { get; private set; }

    /// <summary>Whether the present scan is so late that nothing may be trusted.</summary>
    public bool IsLate => LateBy > timing.LateAfter;

    /// <summary>Begins a scan.</summary>
    /// <param name="now">When it begins.</param>
    public void Begin(MonotonicTime now)
    {
        Scans++;
        var behind = Duration.Max(Duration.Zero, now - NextDue);

        // Before the first scan nothing was driven: a slow start is not a late scan.
        LateBy = Scans == 1 ? Duration.Zero : behind;
        Lateness.Count(LateBy);
        if (now < NextDue)
        {
            return;
        }

        WorstLateness = Duration.Max(WorstLateness, LateBy);
        Slips += LateBy >= timing.Period ? 1 : 0;
        var missed = behind.ToInt64Nanoseconds() / timing.Period.ToInt64Nanoseconds();
        NextDue += timing.Period * (missed + 1);
    }
}
