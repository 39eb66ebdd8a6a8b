using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.Model;

namespace RackController.Service;

/// <summary>Looks every hour, and as soon as something was put down in the growing book, which works of upkeep are due, and calls for
/// whoever keeps the racks while one is overdue. It reads on a thread of its own, and never acts on a load.</summary>
/// <param name="site">The site.</param>
/// <param name="folder">Where its journal and growing book are kept.</param>
/// <param name="clock">Tells the time.</param>
/// <param name="alarms">Who is told.</param>
internal sealed class UpkeepWatch(Site site, StateFolder folder, IScanClock clock, ControllerAlarms alarms)
{
    private static readonly Duration lookEvery = Duration.FromHours(1);

    private readonly BookDesk book = new(folder.Book, site);
    private readonly TellingTime time = new(clock);
    private readonly Lock gate = new();
    private (Instant At, GrowingBook Book)? looked;
    private bool isLooking;

    /// <summary>What was found to be due.</summary>
    public DueUpkeep Due { get; } = new();

    /// <summary>Begins to look where it is time to, and does not wait for it. While the clock is not trusted nothing comes due.</summary>
    public void Follow()
    {
        if (time.Now() is not { WallTrusted: true, Wall: var now } || Book() is not { } done)
        {
            return;
        }

        lock (gate)
        {
            // A wall clock that was set back is reason to look anew, too.
            var isFresh = looked is { } last && ReferenceEquals(last.Book, done) && now >= last.At && now - last.At < lookEvery;
            if (isLooking || isFresh)
            {
                return;
            }

            isLooking = true;
        }

        new Thread(() => Look(done, now)) { Name = "upkeep", IsBackground = true, Priority = ThreadPriority.Lowest }.Start();
    }

    private GrowingBook? Book()
    {
        try
        {
            return book.Look();
        }
        catch (IOException e)
        {
            Raise($"what was done cannot be read, so nobody knows what is due: {e.Message}");
            return null;
        }
    }

    private void Look(GrowingBook done, Instant now)
    {
        (Instant, GrowingBook)? seen = (now, done);
        try
        {
            using var history = JournalHistory.Open(folder.Journal);
            Tell([.. UpkeepList.Read(site, history, done.Upkeep, now).Works.Where(work => work.IsDue)]);
        }
        catch (CouldNotRunException)
        {
            // Whoever writes the same journal raises the alarm. What was due stays so, and the next round looks again.
            seen = null;
        }
        catch (Exception e)
        {
            Raise($"nobody can tell which works of upkeep are due: {e.Message.ReplaceLineEndings(" ")}");
        }

        lock (gate)
        {
            (looked, isLooking) = (seen, false);
        }
    }

    private void Tell(ImmutableArray<UpkeepStatus> works)
    {
        Due.Works = works;
        var overdue = works.Where(work => work.IsOverdue).ToList();
        if (overdue.Count == 0)
        {
            alarms.Clear(ControllerTrouble.UpkeepOverdue);
            return;
        }

        var first = overdue[0];
        var more = overdue.Count > 1 ? $"; {overdue.Count - 1} more on the page of upkeep" : "";
        Raise($"overdue on {first.Rack.Name}: {first.Work.InWords()} ({UpkeepWords.Why(first, site.Zone)}){more}");
    }

    private void Raise(string cause) => alarms.Raise(ControllerTrouble.UpkeepOverdue, cause);
}
