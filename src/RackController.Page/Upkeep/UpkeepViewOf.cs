using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Turns what is known of upkeep into what the page shows.</summary>
/// <param name="site">The site.</param>
internal sealed class UpkeepViewOf(Site site)
{
    private const int MostDone = 50;

    /// <summary>The page.</summary>
    /// <param name="frame">What stands around it.</param>
    /// <param name="mayAct">Whether whoever looks may put works down.</param>
    /// <param name="list">Where works stand; null where that is not known.</param>
    /// <param name="book">The growing book; null where it cannot be read.</param>
    /// <param name="fault">Why something is not known; null where all is.</param>
    /// <param name="now">The time.</param>
    public UpkeepPage Page(FrameView frame, bool mayAct, UpkeepList? list, GrowingBook? book, string? fault, Instant now)
    {
        var works = list?.Works ?? [];
        return new UpkeepPage(
            frame, fault, mayAct, [.. works.Where(work => work.IsDue).Select(work => View(work, now))],
            [.. works.Where(work => !work.IsDue).Select(work => View(work, now))],
            [.. (list?.Relays ?? []).Select(RelayOf)], book is null ? [] : [.. Done(book).Take(MostDone)]);
    }

    /// <summary>What is to be done, and where: <c>north: rinse the screen</c>.</summary>
    /// <param name="work">The work.</param>
    /// <param name="rack">The rack.</param>
    public static string Title(UpkeepWork work, Rack rack) => $"{rack.Name}: {work.InWords()}";

    /// <summary>What was put down as done, newest first.</summary>
    /// <param name="book">The growing book.</param>
    public IEnumerable<UpkeepDoneView> Done(GrowingBook book) =>
        from one in book.Entries.Reverse()
        let done = one.Entry as UpkeepDone
        where done is not null
        let struck = book.Struck.GetValueOrDefault(one.Number)
        select new UpkeepDoneView(
            one.Number, PageWords.Date(done.At, site.Zone), $"{done.Rack}: {UpkeepWorks.WordsOf(done.Work)}", done.By, done.Note,
            struck is null ? null : $"struck by {struck.By}: {struck.Why}");

    private UpkeepView View(UpkeepStatus work, Instant now) => new(
        Title(work.Work, work.Rack), work.Work.Advice(), UpkeepWords.Interval(work.Every), Why(work, now), Percent(work.First.Share),
        work.IsOverdue, $"/upkeep/done?rack={Uri.EscapeDataString(work.Rack.Name)}&work={work.Work.Key()}");

    private string Why(UpkeepStatus work, Instant now) => UpkeepWords.Why(work, site.Zone)
        + (work.ExpectedAt(now) is { } at ? $"; due about {UpkeepWords.Day(at, site.Zone)}" : "");

    private static RelayView RelayOf(RelayLife relay) => new(
        relay.Load.Name,
        string.Create(CultureInfo.InvariantCulture, $"{relay.Operations} times of {relay.Load.RatedOperations}"), Percent(relay.Share),
        relay.IsWorn);

    private static int Percent(double share) => (int)Math.Clamp(Math.Floor(share * 100), 0, 100);
}
