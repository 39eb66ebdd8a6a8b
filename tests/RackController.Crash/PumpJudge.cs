namespace RackController.Crash;

/// <summary>
/// Holds each pump to its limits by the events of one life: no run longer than its maximum, a whole rest before every run, also before
/// the first after a start, since nobody knows when the pump stopped.
/// </summary>
internal static class PumpJudge
{
    /// <summary>The limits in the rack file of this test.</summary>
    private static readonly TimeSpan MaximumRun = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(10);

    /// <summary>A command that is due between two scans comes with the next.</summary>
    private static readonly TimeSpan OneScan = TimeSpan.FromMilliseconds(100);

    /// <summary>What was wrong; empty when nothing was.</summary>
    /// <param name="events">The events of one life, in order.</param>
    public static IEnumerable<string> Complaints(IReadOnlyList<JournalEvent> events)
    {
        if (events.Count == 0)
        {
            yield break;
        }

        var end = events[^1].At;
        foreach (var pump in events.Where(IsOfAPump).GroupBy(happened => happened.Subject))
        {
            var stopped = events[0].At;
            TimeSpan? running = null;
            foreach (var happened in pump)
            {
                if (happened.What == "on")
                {
                    running = happened.At;
                    if (happened.At - stopped < Rest)
                    {
                        yield return $"{pump.Key} rested {happened.At - stopped} before {happened.Words}";
                    }
                }
                else if (running is { } since)
                {
                    stopped = happened.At;
                    running = null;
                    if (stopped - since > MaximumRun + OneScan)
                    {
                        yield return $"{pump.Key} ran {stopped - since} until {happened.Words}";
                    }
                }
            }

            if (end - running > MaximumRun + OneScan)
            {
                yield return $"{pump.Key} ran {end - running} and was still running when the process was killed";
            }
        }
    }

    /// <summary>For how long a pump ran in the runs of one life, without the last: memory may be a scan behind that.</summary>
    public static TimeSpan RanAtLeast(IReadOnlyList<JournalEvent> events, string pump)
    {
        var runs = new List<TimeSpan>();
        TimeSpan? running = null;
        foreach (var happened in events.Where(happened => IsOfAPump(happened) && happened.Subject == pump))
        {
            if (happened.What == "off" && running is { } since)
            {
                runs.Add(happened.At - since);
            }

            running = happened.What == "on" ? happened.At : null;
        }

        return runs.SkipLast(1).Aggregate(TimeSpan.Zero, (sum, run) => sum + run);
    }

    /// <summary>Whether a pump was switched on.</summary>
    public static bool WasSwitchedOn(IReadOnlyList<JournalEvent> events, string pump) =>
        events.Any(happened => IsOfAPump(happened) && happened.Subject == pump && happened.What == "on");

    private static bool IsOfAPump(JournalEvent happened) =>
        happened.Kind == "Load" && happened.Subject.EndsWith("/pump", StringComparison.Ordinal);
}
