namespace RackController.Crash;

/// <summary>One life after the other in the same state folder, each killed at a random moment and judged by its journal.</summary>
internal sealed class Campaign(Setting setting, string folder, Random random, Tally tally)
{
    /// <summary>Twice as many minutes for the racks: a few floods.</summary>
    private const double LongestLifeMs = 2000;

    /// <summary>While the runtime starts, the program is read, and the journal is opened.</summary>
    private const double LongestStartMs = 1000;

    private static readonly TimeSpan Day = TimeSpan.FromHours(24);

    private JournalCopy? before;

    /// <summary>How many events were acknowledged in all lives together.</summary>
    public long Acknowledged { get; private set; }

    /// <summary>One life.</summary>
    /// <param name="round">Its number, for messages.</param>
    public void Run(int round)
    {
        before = Read();
        using var life = new Life(setting, folder);
        var diesYoung = random.Next(4) == 0;
        var isReady = diesYoung || life.WaitUntilReady();
        if (diesYoung)
        {
            Sleep(LongestStartMs);
        }
        else
        {
            Live(round, life);
        }

        var ended = life.HasEnded;
        life.Kill();
        tally.Holds(
            $"round {round} starts",
            ended ? $"it ended by itself: {string.Join(" | ", life.Lines)}" : isReady ? null : "it was never ready");
        Judge(round, life);
    }

    private void Live(int round, Life life)
    {
        Sleep(LongestLifeMs / 2);
        if (random.Next(2) == 0)
        {
            setting.Clock.Step(NextStep());
            tally.Holds(
                $"round {round} notices that its clock was set",
                life.WaitUntilItSays("Clock wall clock: stepped") ? null : "it said nothing");
        }

        Sleep(LongestLifeMs / 2);
    }

    private void Judge(int round, Life life)
    {
        var after = Read();
        Acknowledged += life.Acknowledged;
        IReadOnlyList<JournalEvent> events = after is null || after.Run == before?.Run ? [] : after.Events;
        tally.Holds($"round {round} loses nothing acknowledged", StoryJudge.Lost(life.Acknowledged, events));
        tally.Holds($"round {round} tells one story", StoryJudge.Difference(life.Lines, events));
        tally.Holds($"round {round} keeps pumps to their limits", FirstOf(PumpJudge.Complaints(events)));
        if (before is not null)
        {
            tally.Holds($"round {round} keeps its journal", after is null ? "it is gone" : null);
        }

        if (before is not null && after is not null)
        {
            tally.Holds($"round {round} keeps latches", FirstOf(MemoryJudge.LatchComplaints(before.Memory, after.Memory, events)));
            tally.Holds($"round {round} keeps run totals", FirstOf(MemoryJudge.TotalComplaints(before, after, events)));
        }
    }

    /// <summary>A day, or one to twenty minutes, on or back.</summary>
    private TimeSpan NextStep()
    {
        var by = random.Next(2) == 0 ? Day : TimeSpan.FromMinutes(1 + 19 * random.NextDouble());
        return random.Next(2) == 0 ? by : -by;
    }

    private JournalCopy? Read() => JournalCopy.Read(folder, Path.Combine(setting.Work, "copy"));

    private void Sleep(double atMostMs) => Thread.Sleep(TimeSpan.FromMilliseconds(atMostMs * random.NextDouble()));

    private static string? FirstOf(IEnumerable<string> complaints) => complaints.FirstOrDefault();
}
