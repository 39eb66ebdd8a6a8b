using NodaTime;
using RackController.Control;

namespace RackController.Service.Tests;

public sealed class JournalHistoryTests : IDisposable
{
    private static readonly Instant noon = Happenings.Noon;

    private readonly TemporaryFolder folder = new();

    private string Path => folder.File("journal.db");

    [Fact]
    public void SamplesOfASpanComeNewestFirstAndNoOthers()
    {
        using var journal = new MadeUpJournal(Path);
        journal.Add([.. Enumerable.Range(0, 100).Select(minute => Sample(minute, minute))]);
        using var history = journal.Read();

        var found = history.SamplesIn(new HistorySpan(At(10), At(13))).ToList();

        Assert.Equal([Sample(12, 12), Sample(11, 11), Sample(10, 10)], found);
    }

    [Fact]
    public void WhatWasWrittenUnderAClockThatWasWrongHidesNothingFromBefore()
    {
        using var journal = new MadeUpJournal(Path);
        journal.Add([Sample(1, 1), Sample(2, 2)]);
        journal.Add([.. Enumerable.Range(0, 1000).Select(minute => new Sample(Instant.FromUnixTimeSeconds(60 * minute), "north/air", 5))]);
        journal.Add([Sample(3, 3)]);
        using var history = journal.Read();

        Assert.Equal([3.0, 2, 1], history.SamplesIn(new HistorySpan(noon, At(10))).Select(sample => sample.Value!.Value));
    }

    [Fact]
    public void AReaderSeesWhatWasCommittedWhileItIsOpen()
    {
        using var journal = new MadeUpJournal(Path);
        using var history = journal.Read();
        Assert.Empty(history.EventsIn(new HistorySpan(noon, At(10))));

        journal.Add(MadeUpJournal.Event(At(1), EventKind.Load, "north/pump", "on"));

        Assert.Equal("north/pump", Assert.Single(history.EventsIn(new HistorySpan(noon, At(10)))).Event.Subject);
    }

    [Fact]
    public void EventsComeInPagesThatMissNothingAndRepeatNothing()
    {
        using var journal = new MadeUpJournal(Path);
        journal.Add([.. Enumerable.Range(0, 95).Select(at => MadeUpJournal.Event(At(at), EventKind.Load, "north/pump", "on", $"{at}"))]);
        using var history = journal.Read();

        var found = new List<KeptEvent>();
        long? before = null;
        while (history.EventPage(new EventFilter(null, null), before, 10) is { Length: > 0 } page)
        {
            Assert.True(page.Length <= 10);
            found.AddRange(page);
            before = page[^1].Number;
        }

        Assert.Equal(Enumerable.Range(0, 95).Reverse().Select(at => $"{at}"), found.Select(kept => kept.Event.Because));
    }

    [Fact]
    public void EventsAreFilteredByKindAndByWhatTheyHappenedTo()
    {
        using var journal = new MadeUpJournal(Path);
        journal.Add(
            MadeUpJournal.Event(At(1), EventKind.Load, "north/pump", "on"),
            MadeUpJournal.Event(At(2), EventKind.Flood, "north", "filling"),
            MadeUpJournal.Event(At(3), EventKind.Load, "northern/pump", "on"));
        using var history = journal.Read();

        Assert.Equal(["northern/pump", "north/pump"], Subjects(history, new EventFilter(EventKind.Load, null)));
        Assert.Equal(["north", "north/pump"], Subjects(history, new EventFilter(null, "north")));
        Assert.Equal(["north/pump"], Subjects(history, new EventFilter(EventKind.Load, "north")));
        Assert.Empty(Subjects(history, new EventFilter(null, "' OR 1")));
    }

    [Fact]
    public void AJournalThatIsNotThereIsOneClearLine() => Says("no journal", () => JournalHistory.Open(Path));

    [Fact]
    public void AFileThatIsNoJournalIsOneClearLine()
    {
        File.WriteAllText(Path, new string('x', 5000));

        Says("the racks are driven all the same", () => JournalHistory.Open(Path));
    }

    [Fact]
    public void ADamagedJournalIsOneClearLine()
    {
        using (var journal = new MadeUpJournal(Path))
        {
            journal.Add([.. Enumerable.Range(0, 20_000).Select(minute => Sample(minute, minute))]);
        }

        using (var bytes = new FileStream(Path, FileMode.Open))
        {
            bytes.Position = bytes.Length / 2;
            bytes.Write(Enumerable.Repeat((byte)0xA5, 100_000).ToArray());
        }

        using var history = JournalHistory.Open(Path);

        Says("the racks are driven all the same", () => history.SamplesIn(new HistorySpan(noon, At(20_000))).Count());
    }

    public void Dispose() => folder.Dispose();

    private static Instant At(int minute) => noon + Duration.FromMinutes(minute);

    private static Sample Sample(int minute, double value) => new(At(minute), "north/air", value);

    private static IEnumerable<string> Subjects(JournalHistory history, EventFilter filter) =>
        history.EventPage(filter, null, 10).Select(kept => kept.Event.Subject);

    private static void Says(string words, Func<object> read)
    {
        var line = Assert.Throws<CouldNotRunException>(read).Message;
        Assert.Contains(words, line, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', line);
    }
}
