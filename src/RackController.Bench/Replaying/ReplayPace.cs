using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>
/// Where a controller that decides otherwise than the one on record is scanned between two scans on record: when it has something due
/// itself. One that decides the same has something due exactly where a scan is on record, give or take the time that a board was late.
/// </summary>
internal static class ReplayPace
{
    private const int PeriodsOfPatience = 2;

    /// <summary>The scan at which a controller could change something by itself, clearly before the next on record.</summary>
    /// <param name="control">The controller.</param>
    /// <param name="at">Its last scan.</param>
    /// <param name="next">The next scan on record.</param>
    /// <returns>Null when there is none.</returns>
    public static Moment? Before(RecordedScan next, RackControl control, in Moment at)
    {
        var period = control.Site.Scan.Period;
        var until = next.At.Monotonic + -(period * PeriodsOfPatience + next.Conditions.LateBy);
        if (control.NextChange >= until)
        {
            return null;
        }

        var waitNs = Math.Max(1, control.NextChange.Nanoseconds - at.Monotonic.Nanoseconds);
        var by = period * (((waitNs - 1) / period.ToInt64Nanoseconds()) + 1);
        return at.Monotonic + by < until ? at with { Monotonic = at.Monotonic + by, Wall = at.Wall + by } : null;
    }
}
