using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>The past of a rack in words and numbers, for whoever has no charts.</summary>
internal static class HistoryView
{
    /// <summary>A table has so many rows at most; whoever wants more takes the file.</summary>
    private const int MostRows = 48;

    /// <summary>Makes the page.</summary>
    /// <param name="frame">What stands around it.</param>
    /// <param name="site">The site.</param>
    /// <param name="asked">What is asked for.</param>
    /// <param name="past">What the journal tells; null where it tells nothing.</param>
    /// <param name="fault">Why it tells nothing.</param>
    public static HistoryPage Page(FrameView frame, Site site, HistoryAsked asked, PastOfRack? past, string? fault)
    {
        var title = $"{asked.Rack.Name}, {PageWords.Date(asked.Span.From, site.Zone)} to {PageWords.Date(asked.Span.Until, site.Zone)}";
        return past is null
            ? new HistoryPage(frame, site, asked, title, fault, [], [], [])
            : new HistoryPage(
                frame, site, asked, title, null,
                [.. past.Trends.Select(chart => Table(chart.Kind, chart.Trends, asked, site))],
                [.. past.Loads.Select(load => Times(load, asked.Rack.Name, site.Zone))],
                [
                    .. past.Marks.Select(
                        mark => new DueView(PageWords.Date(mark.At, site.Zone), mark.IsAlarm ? "alarm" : "flood", mark.Words, "")),
                ]);
    }

    /// <summary>How much of the journal a page reads: the numbers that it shows.</summary>
    public static PastOfRack Read(JournalHistory journal, Site site, HistoryAsked asked, IReadOnlyList<Sample> unwritten) =>
        PastOfRack.Read(journal, site, asked, unwritten, MostRows);

    private static ChartTableView Table(ChartKind kind, ImmutableArray<SensorTrend> trends, HistoryAsked asked, Site site)
    {
        var unit = site.Units.Of(kind.Unit);
        return new ChartTableView(
            kind.Key, kind.Title, unit.Symbol, [.. trends.Select(trend => RackViewOf.Short(trend.Sensor, asked.Rack.Name))],
            [
                .. TrendTable.Of(trends, asked.Span, MostRows).Select(row => new TableRowView(
                    PageWords.Date(row.From, site.Zone), [.. row.Points.Select(point => Words(point, unit))])),
            ]);
    }

    private static string Words(TrendPoint? point, ShownUnit unit) => point is not { } known ? "not known"
        : known.Least.Equals(known.Most) ? Number(unit.From(known.Mean))
        : $"{Number(unit.From(known.Mean))} ({Number(unit.From(known.Least))} to {Number(unit.From(known.Most))})";

    private static string Number(double value) => value.ToString(Math.Abs(value) < 20 ? "0.##" : "0.#", CultureInfo.InvariantCulture);

    private static LoadTimesView Times(LoadTimes load, string rack, DateTimeZone zone)
    {
        var onFor = load.On.Aggregate(Duration.Zero, (sum, on) => sum + on.Length);
        return new LoadTimesView(
            RackViewOf.Short(load.Load, rack), PageWords.CountDown(onFor), load.On.Length,
            load.On.IsEmpty ? "" : PageWords.Date(load.On[^1].Until, zone));
    }
}
