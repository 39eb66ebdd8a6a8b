namespace RackController.Crash;

/// <summary>Holds what a life remembers to what was remembered before it: nobody resets anything here, so a latch stays, its pump
/// stays off, and what a pump ran in its day only grows.</summary>
internal static class MemoryJudge
{
    private const string Latched = "/latched";
    private const string Used = "/pump-daily-budget/used";
    private const string DayAge = "/pump-daily-budget/day age";

    /// <summary>After a day of the monotonic clocks, and of the time away, the budget begins anew.</summary>
    private static readonly TimeSpan BudgetDay = TimeSpan.FromHours(24);

    /// <summary>Away for longer than this by the wall clock, a new day of the budget may have begun.</summary>
    private static readonly TimeSpan LongAway = TimeSpan.FromHours(1);

    /// <summary>Memory counts in whole milliseconds, and a run ends within a scan.</summary>
    private static readonly TimeSpan Rounding = TimeSpan.FromMilliseconds(100);

    /// <summary>Whether anything is latched.</summary>
    public static bool HasLatch(JournalCopy journal) => journal.Memory.Any(IsLatch);

    /// <summary>Latches that were let go, or whose pump ran.</summary>
    /// <param name="before">What was remembered when the life began.</param>
    /// <param name="memory">What it remembered last.</param>
    /// <param name="events">What happened in it.</param>
    public static IEnumerable<string> LatchComplaints(
        IReadOnlyDictionary<string, long> before, IReadOnlyDictionary<string, long> memory, IReadOnlyList<JournalEvent> events)
    {
        foreach (var key in before.Where(IsLatch))
        {
            if (memory.GetValueOrDefault(key.Key) != 1)
            {
                yield return $"{key.Key} was 1 and is no more";
            }

            var pump = key.Key[..key.Key.IndexOf('/', StringComparison.Ordinal)] + "/pump";
            if (PumpJudge.WasSwitchedOn(events, pump))
            {
                yield return $"{key.Key} was 1 and {pump} was switched on";
            }
        }
    }

    /// <summary>Run totals that shrank, or that lack a run.</summary>
    /// <param name="before">The journal when the life began.</param>
    /// <param name="after">The journal after it.</param>
    /// <param name="events">What happened in it.</param>
    public static IEnumerable<string> TotalComplaints(JournalCopy before, JournalCopy after, IReadOnlyList<JournalEvent> events)
    {
        if (events.Count == 0 || events[0].Wall - before.SavedAt > LongAway)
        {
            yield break;
        }

        foreach (var (key, used) in before.Memory.Where(item => item.Key.EndsWith(Used, StringComparison.Ordinal)))
        {
            var age = TimeSpan.FromMilliseconds(before.Memory.GetValueOrDefault(key[..^Used.Length] + DayAge));
            if (age + LongAway + (events[^1].At - events[0].At) >= BudgetDay)
            {
                continue;
            }

            var pump = key[..^Used.Length] + "/pump";
            var least = TimeSpan.FromMilliseconds(used) + PumpJudge.RanAtLeast(events, pump) - Rounding;
            var now = TimeSpan.FromMilliseconds(after.Memory.GetValueOrDefault(key));
            if (now < least)
            {
                yield return $"{key} says {now}, and {pump} ran {least} at least";
            }
        }
    }

    private static bool IsLatch(KeyValuePair<string, long> item) =>
        item.Key.EndsWith(Latched, StringComparison.Ordinal) && item.Value == 1;
}
