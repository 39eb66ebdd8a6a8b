using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What the journal tells of one rack over a span.</summary>
/// <param name="Trends">What its measuring sensors said, by the charts that show them.</param>
/// <param name="Loads">When its loads were on, in the order of the rack file.</param>
/// <param name="Marks">Its floods and alarms, oldest first; the newest of them where there are too many to be told apart.</param>
internal sealed record PastOfRack(
    ImmutableArray<(ChartKind Kind, ImmutableArray<SensorTrend> Trends)> Trends, ImmutableArray<LoadTimes> Loads,
    ImmutableArray<Mark> Marks)
{
    private const int MostMarks = 300;

    /// <summary>Reads it.</summary>
    /// <param name="journal">The journal.</param>
    /// <param name="site">The site.</param>
    /// <param name="asked">What is asked for.</param>
    /// <param name="unwritten">What is not in the journal yet.</param>
    /// <param name="mostPoints">How many points a trend has at most.</param>
    public static PastOfRack Read(
        JournalHistory journal, Site site, HistoryAsked asked, IReadOnlyList<Sample> unwritten, int mostPoints = SensorTrend.MostPoints)
    {
        if (asked.IsByDay)
        {
            return new PastOfRack(DaysOfRack.Read(journal, site, asked, mostPoints), [], MarksOf(journal, site, asked, EventKind.Alarm));
        }

        var kinds = ChartKind.All.Where(kind => kind != ChartKind.Loads && asked.Shows(kind.Key))
            .Select(kind => (Kind: kind, Names: kind.SensorsOf(site, asked.Rack).Select(sensor => sensor.Name).ToImmutableArray()))
            .Where(kind => !kind.Names.IsEmpty).ToImmutableArray();
        var names = kinds.SelectMany(kind => kind.Names).ToImmutableArray();
        var trends = names.IsEmpty
            ? []
            : SensorTrend.Of(journal.SamplesIn(asked.Span).Concat(unwritten), names, asked.Span, mostPoints)
                .ToImmutableDictionary(trend => trend.Sensor);
        var loads = site.Loads.Where(load => load.Rack == asked.Rack.Id).ToImmutableArray();
        return new PastOfRack(
            [.. kinds.Select(kind => (kind.Kind, kind.Names.Select(name => trends[name]).ToImmutableArray()))],
            asked.Shows(ChartKind.Loads.Key)
                ? LoadTimes.Of(journal.EventsBackwards(EventKind.Load), loads, asked.Span, journal.Begins())
                : [],
            MarksOf(journal, site, asked, EventKind.Flood, EventKind.Alarm));
    }

    private static ImmutableArray<Mark> MarksOf(
        JournalHistory journal, Site site, HistoryAsked asked, params ReadOnlySpan<EventKind> kinds) =>
    [
        .. journal.EventsIn(asked.Span, kinds).Select(kept => MarkOf(kept.Event, site, asked.Rack)).OfType<Mark>()
            .Take(MostMarks).Reverse(),
    ];

    // Of a flood its beginning; of an alarm that it came, since what became of it stands in the list of alarms.
    private static Mark? MarkOf(ControlEvent happened, Site site, Rack rack)
    {
        var isOfRack = happened.Subject == rack.Name || happened.Subject.StartsWith(rack.Name + "/", StringComparison.Ordinal);
        var isOfOther = site.Racks.Any(each => each != rack && (happened.Subject == each.Name
            || happened.Subject.StartsWith(each.Name + "/", StringComparison.Ordinal)));
        return happened.Kind switch
        {
            EventKind.Flood when isOfRack && happened.What == FloodEvent.Filling => new Mark(happened.At.Wall, false, "flood begins"),
            EventKind.Flood when isOfRack && happened.What == FloodEvent.CutShort =>
                new Mark(happened.At.Wall, false, $"flood cut short, because {happened.Because}"),
            EventKind.Alarm when !isOfOther && happened.What == AlarmState.Unacknowledged.InWords() =>
                new Mark(happened.At.Wall, true, $"{happened.Subject}: {happened.Because}"),
            _ => null,
        };
    }
}

/// <summary>Something that is marked in charts.</summary>
/// <param name="At">When it happened.</param>
/// <param name="IsAlarm">Whether it is an alarm; else it is a flood.</param>
/// <param name="Words">What happened.</param>
internal sealed record Mark(Instant At, bool IsAlarm, string Words);
