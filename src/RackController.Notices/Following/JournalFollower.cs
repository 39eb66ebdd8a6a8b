using System.Collections.Immutable;
using NodaTime;
using RackController.Service;

namespace RackController.Notices;

/// <summary>Reads what comes new into a journal, which the controller writes meanwhile.</summary>
/// <param name="path">Its file.</param>
internal sealed class JournalFollower(string path)
{
    /// <summary>So many are read at once; the rest a moment later.</summary>
    private const int MostAtOnce = 1_000;

    /// <summary>Of a journal that was begun anew, what is older than this is not told: whoever put the old one aside was there.</summary>
    private static readonly Duration YoungEnough = Duration.FromHours(1);

    private static readonly Duration LookAllTheSameEvery = Duration.FromSeconds(30);

    private (DateTime, long, DateTime, long) seen;
    private Instant lookedAt;

    /// <summary>What came after a position.</summary>
    /// <param name="position">The position; null for the end of the journal, so that nothing of the past is told.</param>
    /// <param name="now">The time.</param>
    /// <returns>The events, oldest first, and the position to go on from.</returns>
    /// <exception cref="CouldNotRunException">The journal is not there or cannot be read.</exception>
    public (ImmutableArray<KeptEvent> Events, Position Position) Read(Position? position, Instant now)
    {
        if (!File.Exists(path))
        {
            return ([], position ?? Position.Beginning);
        }

        // A look at the files costs nothing beside one at the database. They may change while that is read, so they are looked at before.
        var look = Look();
        if (position is not null && look == seen && now >= lookedAt && now - lookedAt < LookAllTheSameEvery)
        {
            return ([], position);
        }

        var found = ReadNow(position, now);
        (seen, lookedAt) = found.Events.Length < MostAtOnce ? (look, now) : default;
        return found;
    }

    private (ImmutableArray<KeptEvent> Events, Position Position) ReadNow(Position? position, Instant now)
    {
        using var journal = JournalHistory.Open(path);
        var from = position is null ? End(journal) : IsStillThere(journal, position) ? position : Anew(journal, position, now);
        ImmutableArray<KeptEvent> events = [.. journal.EventsAfter(from.Number, MostAtOnce)];
        return (events, events is [.., var last] ? At(last) : from);
    }

    private (DateTime, long, DateTime, long) Look()
    {
        var (journal, log) = (new FileInfo(path), new FileInfo(path + "-wal"));
        return (
            journal.Exists ? journal.LastWriteTimeUtc : default, journal.Exists ? journal.Length : 0,
            log.Exists ? log.LastWriteTimeUtc : default, log.Exists ? log.Length : 0);
    }

    private static Position End(JournalHistory journal) =>
        journal.EventPage(new EventFilter(null, null), null, 1) is [var newest] ? At(newest) : Position.Beginning;

    private static bool IsStillThere(JournalHistory journal, Position position) => position.Number == 0
        || (journal.EventPage(new EventFilter(null, null), position.Number + 1, 1) is [var there] && At(there) == position);

    // The old journal was put aside. The new one holds what could be saved of it, or nothing; in either case what is later than the last
    // that was told is new.
    private static Position Anew(JournalHistory journal, Position position, Instant now)
    {
        var since = Instant.Max(position.Wall, now - YoungEnough);
        var oldest = journal.EventsIn(new HistorySpan(since + Duration.Epsilon, Instant.MaxValue)).LastOrDefault();
        return oldest is null ? End(journal) : new Position(oldest.Number - 1, since);
    }

    private static Position At(KeptEvent kept) => new(kept.Number, kept.Event.At.Wall);
}
