using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Turns what is known of alarms into what the page shows. The figures beside ours are those of ISA-18.2-2016 and EEMUA 191, both
/// from memory: for one operator, averaged over a month.</summary>
internal sealed class AlarmDeskView(Site site, AlarmBook book)
{
    /// <summary>So many days are counted, or as many as are on record.</summary>
    private const int MostDays = 30;

    private const double AcceptablePerDay = 150;
    private const int ManageablePerDay = 300;
    private const int MostStanding = 5;
    private const double MostOfOneInPercent = 5;

    /// <summary>The days that are counted, the last of them today. Days before there was a record would only flatter the average.</summary>
    /// <param name="now">The time.</param>
    /// <param name="begins">When the record begins; null where there is none.</param>
    public HistorySpan Span(Instant now, Instant? begins)
    {
        var earliest = now.InZone(site.Zone).Date.PlusDays(1 - MostDays);
        var first = LocalDate.Max(earliest, Instant.Min(begins ?? now, now).InZone(site.Zone).Date);
        return new HistorySpan(site.Zone.AtStartOfDay(first).ToInstant(), now + Duration.Epsilon);
    }

    /// <summary>Makes the page.</summary>
    /// <param name="frame">What stands around it.</param>
    /// <param name="mayAct">Whether whoever looks may act.</param>
    /// <param name="status">The picture.</param>
    /// <param name="past">Every event of alarms over the days, newest first; null where the journal cannot be read.</param>
    /// <param name="fault">Why it cannot.</param>
    public AlarmDeskPage Page(FrameView frame, bool mayAct, SiteStatus status, PastAlarms? past, string? fault)
    {
        var statistics = past is null
            ? null
            : AlarmStatistics.Of([.. past.OfDays.Reverse()], past.Days, site.Zone, book.PriorityOf);
        return new AlarmDeskPage(
            frame, mayAct, [.. status.Alarms.Select(alarm => Standing(alarm, status.At.Wall))], fault,
            statistics is null ? [] : [.. Figures(statistics)],
            statistics is null ? [] : [.. DaysOf(statistics)],
            statistics is null ? [] : [.. MostFrequent(statistics)],
            [.. book.OfSite.Select(known => Known(known.Key, known.Text, status))],
            past is null ? [] : [.. past.Last.Select(Happened)]);
    }

    private StandingAlarm Standing(Alarm alarm, Instant now) => new(
        alarm, PageWords.Clock(alarm.Since.Wall, now, site.Zone),
        alarm.ShelvedUntil is { } until ? PageWords.Clock(until, now, site.Zone) : null, book.CanBePutAside(alarm.Key));

    private static KnownAlarm Known(string key, AlarmText text, SiteStatus status)
    {
        var state = status.Alarms.FirstOrDefault(alarm => alarm.Key == key)?.State ?? AlarmState.Normal;
        return new KnownAlarm(key, text.Priority.InWords(), state.InWords(), state != AlarmState.OutOfService);
    }

    private DueView Happened(ControlEvent happened) => new(
        PageWords.Date(happened.At.Wall, site.Zone), happened.Subject, happened.What, happened.Because);

    private static IEnumerable<AlarmFigure> Figures(AlarmStatistics found)
    {
        var perDay = (double)found.Count / found.PerDay.Length;
        yield return new AlarmFigure("Alarms a day, on average", Number(perDay), "up to 150 (6 an hour)", perDay > AcceptablePerDay);
        var mostOnOneDay = found.PerDay.Max(day => day.Count);
        yield return new AlarmFigure("Most on one day", $"{mostOnOneDay}", "up to 300", mostOnOneDay > ManageablePerDay);
        yield return new AlarmFigure(
            "Most within ten minutes", $"{found.MostInTenMinutes}", "up to 10", found.MostInTenMinutes > AlarmStatistics.MostWithoutFlood);
        yield return new AlarmFigure(
            "Alarm floods: more than 10 within ten minutes", $"{found.Floods}", "under 1 % of the time", found.Floods > 0);
        var standing = found.Standing.Length == 0 ? "none" : string.Join(", ", found.Standing.Select(alarm => alarm.Key));
        yield return new AlarmFigure("Standing for more than a day", standing, "fewer than 5", found.Standing.Length >= MostStanding);
        var chatter = found.Chattering.IsEmpty
            ? "none"
            : string.Join(", ", found.Chattering.Select(alarm => $"{alarm.Key} ({alarm.Count})"));
        yield return new AlarmFigure("Chattering: 3 or more within a minute", chatter, "none", !found.Chattering.IsEmpty);
        var recommended = (string[])["few, under 1 %", "about 5 %", "about 15 %", "about 80 %"];
        foreach (var ((priority, count), theirs) in found.ByPriority.Zip(recommended))
        {
            yield return new AlarmFigure(
                $"Priority {priority.InWords()}", $"{count}{Percent(count, found.Count)}", theirs, IsOdd: false);
        }
    }

    private static IEnumerable<AlarmFigure> MostFrequent(AlarmStatistics found) => found.MostFrequent.Select(alarm => new AlarmFigure(
        alarm.Key, $"{alarm.Count}{Percent(alarm.Count, found.Count)}", "",
        alarm.Count * 100.0 / found.Count > MostOfOneInPercent && alarm.Count > found.PerDay.Length));

    private static IEnumerable<AlarmDay> DaysOf(AlarmStatistics found)
    {
        var most = Math.Max(1, found.PerDay.Max(day => day.Count));
        return found.PerDay.Select(day => new AlarmDay(
            day.Day.ToString("ddd d MMM", CultureInfo.InvariantCulture), day.Count, day.Count * 100 / most));
    }

    private static string Percent(int count, int of) => of == 0 ? "" : $" ({Number(count * 100.0 / of)} %)";

    private static string Number(double value) => value.ToString(value < 10 ? "0.#" : "0", CultureInfo.InvariantCulture);
}

/// <summary>What the journal tells of alarms.</summary>
/// <param name="Days">The days that are counted.</param>
/// <param name="OfDays">Every event of the days that are counted, newest first.</param>
/// <param name="Last">The last events, newest first, however old.</param>
internal sealed record PastAlarms(HistorySpan Days, ImmutableArray<ControlEvent> OfDays, ImmutableArray<ControlEvent> Last)
{
    private const int MostLast = 200;

    // A month of an alarm system that nobody can bear any more.
    private const int MostCounted = 50_000;

    /// <summary>Reads it.</summary>
    public static PastAlarms Read(JournalHistory journal, HistorySpan days) => new(
        days,
        [.. journal.EventsIn(days, EventKind.Alarm).Take(MostCounted).Select(kept => kept.Event)],
        [.. journal.EventPage(new EventFilter(EventKind.Alarm, null), null, MostLast).Select(kept => kept.Event)]);
}
