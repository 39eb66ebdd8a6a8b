using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// Sees to it that every day is summed up once it is over. It reads on a thread of its own, because that takes a while and events must
/// not wait for it; what it found is fetched by the thread that writes.
/// </summary>
/// <param name="journal">The journal's file.</param>
/// <param name="site">The site.</param>
/// <param name="alarms">Who is told when it fails for a reason that nobody else tells.</param>
internal sealed class DayKeeper(string journal, Site site, ControllerAlarms alarms)
{
    /// <summary>After a long rest, or in a journal from before there were sums, so many days are made up for.</summary>
    private const int MostDaysBack = 14;

    private readonly Lock gate = new();
    private readonly DriftWatch drift = new(site, alarms);
    private List<DaySum> found = [];
    private LocalDate? summedUpTo;
    private bool isReading;

    /// <summary>Begins to sum up what is due, after samples were written.</summary>
    /// <param name="now">The moment; under a clock that is not trusted no day is over.</param>
    public void Follow(in Moment now)
    {
        if (!now.WallTrusted)
        {
            return;
        }

        var (wall, yesterday) = (now.Wall, now.Wall.InZone(site.Zone).Date.PlusDays(-1));
        lock (gate)
        {
            if (isReading || IsUpTo(wall))
            {
                return;
            }

            isReading = true;
        }

        new Thread(() => SumUpTo(yesterday, wall)) { Name = "day sums", IsBackground = true, Priority = ThreadPriority.Lowest }.Start();
    }

    /// <summary>Whether every day that is over at a time is summed up.</summary>
    public bool IsUpTo(Instant now)
    {
        lock (gate)
        {
            return summedUpTo >= now.InZone(site.Zone).Date.PlusDays(-1);
        }
    }

    /// <summary>Takes what was summed up since.</summary>
    public IReadOnlyList<DaySum> Take()
    {
        lock (gate)
        {
            var taken = found;
            found = taken.Count > 0 ? [] : taken;
            return taken;
        }
    }

    private void SumUpTo(LocalDate yesterday, Instant now)
    {
        var sums = new List<DaySum>();
        LocalDate? done = null;
        try
        {
            using var history = JournalHistory.Open(journal);
            var earliest = yesterday.PlusDays(1 - MostDaysBack);
            var first = history.LastDay() is { } last && last >= earliest ? last.PlusDays(1) : earliest;
            for (var day = first; day <= yesterday; day = day.PlusDays(1))
            {
                sums.AddRange(DaySums.Of(history, site, day));
            }

            done = yesterday;
            alarms.Clear(ControllerTrouble.DaysNotSummed);
            drift.Look(history, now);
        }
        catch (CouldNotRunException)
        {
            // Whoever writes the same file raises the alarm; this is tried again with the next samples, from the first day that is missing.
            // Where only the look at the floods failed, the sums are there, and the next look comes with the next day.
            sums = done is null ? [] : sums;
        }
        catch (Exception e)
        {
            sums = done is null ? [] : sums;
            alarms.Raise(
                ControllerTrouble.DaysNotSummed,
                $"days cannot be summed up, or floods not be held against the fit: {e.Message.ReplaceLineEndings(" ")}");
        }

        lock (gate)
        {
            found.AddRange(sums);
            summedUpTo = done ?? summedUpTo;
            isReading = false;
        }
    }
}
