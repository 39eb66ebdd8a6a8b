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

    /// <summary>What came after a position.</summary>
    /// <param name="position">The position; null for the end of the journal, so that nothing of the past is told.</param>
    /// <param name="now">The time.</param>
    /// <exception cref="CouldNotRunException">The journal is not there or cannot be read.</exception>
    public (ImmutableArray<KeptEvent> Events, Position Position) Read(Position? position, Instant now)
    {
        using var journal = JournalHistory.Open(path);
        var from = position is null ? End(journal) : IsStillThere(journal, position) ? position : Anew(journal, position, now);
        ImmutableArray<KeptEvent> events = [.. journal.EventsAfter(from.Number, MostAtOnce)];
        return (events, events is [.., var last] ? At(last) : from);
    }

    private static Position End(JournalHistory journal) =>
        journal.EventPage(new EventFilter(null, null), null, 1) is [var newest] ? At(newest) : new Position(0, Instant.FromUnixTimeTicks(0));

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
