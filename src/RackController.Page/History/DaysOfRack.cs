using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What the sums of days tell of one rack, as charts.</summary>
internal static class DaysOfRack
{
    /// <summary>Reads them.</summary>
    /// <param name="journal">The journal.</param>
    /// <param name="site">The site.</param>
    /// <param name="asked">What is asked for.</param>
    /// <param name="mostPoints">How many points a trend has at most.</param>
    public static ImmutableArray<(ChartKind Kind, ImmutableArray<SensorTrend> Trends)> Read(
        JournalHistory journal, Site site, HistoryAsked asked, int mostPoints)
    {
        var first = asked.Span.From.InZone(site.Zone).Date;
        var sums = journal.Days(first, asked.Span.Until.InZone(site.Zone).Date).ToLookup(sum => sum.Figure);
        ImmutableArray<SensorTrend> TrendsOf(DayFigure figure, IEnumerable<string> subjects, Func<DaySum, string> subjectOf)
        {
            var known = subjects.ToList();
            var bySubject = sums[figure].ToLookup(subjectOf);
            return [.. known.Select(name => new SensorTrend(name, [.. PointsOf(bySubject[name], asked.Span, site.Zone, mostPoints)]))];
        }

        string OwnerOf(DaySum sum) => site.Loads.Any(load => load.Name == sum.Subject && load.Rack == asked.Rack.Id) ? asked.Rack.Name : "";

        var loads = site.Loads.Where(load => load.Rack == asked.Rack.Id).Select(load => load.Name);
        IEnumerable<(ChartKind Kind, ImmutableArray<SensorTrend> Trends)> all =
        [
            (ChartKind.Hours, TrendsOf(DayFigure.HoursOn, loads, sum => sum.Subject)),
            (ChartKind.DailyLight, TrendsOf(DayFigure.LightMolPerM2, loads, sum => sum.Subject)),
            (ChartKind.Energy, TrendsOf(DayFigure.EnergyKWh, [asked.Rack.Name], OwnerOf)),
            (ChartKind.Floods, TrendsOf(DayFigure.Floods, [asked.Rack.Name], sum => sum.Subject)),
            (ChartKind.Water, TrendsOf(DayFigure.WaterL, [asked.Rack.Name], sum => sum.Subject)),
            .. ChartKind.All.Where(kind => kind != ChartKind.Loads && asked.Shows(kind.Key)).Select(kind => (kind, TrendsOf(
                DayFigure.Measured, kind.SensorsOf(site, asked.Rack).Select(sensor => sensor.Name), sum => sum.Subject))),
        ];
        var isOfLoads = asked.Shows(ChartKind.Loads.Key);
        return
        [
            .. all.Where(chart => isOfLoads || ChartKind.All.Contains(chart.Kind))
                .Where(chart => chart.Trends.Any(trend => !trend.Points.IsEmpty)),
        ];
    }

    // What several loads took on a day is one figure; several days of one stretch are summed up as any other values are.
    private static IEnumerable<TrendPoint> PointsOf(IEnumerable<DaySum> sums, HistorySpan span, DateTimeZone zone, int mostPoints)
    {
        var days = sums.GroupBy(sum => sum.Day).Select(day => new TrendPoint(
            Instant.Max(zone.AtStartOfDay(day.Key).ToInstant(), span.From), day.Sum(sum => sum.Least), day.Sum(sum => sum.Mean),
            day.Sum(sum => sum.Most), IsAfterGap: false)).Where(point => span.Holds(point.At));
        TrendPoint? before = null;
        var longestSilence = Duration.Max(Duration.FromHours(26), span.Length / mostPoints * 2);
        foreach (var stretch in days.GroupBy(point => span.StretchOf(point.At, mostPoints)))
        {
            var at = stretch.First().At;
            var point = new TrendPoint(
                at, stretch.Min(each => each.Least), stretch.Average(each => each.Mean), stretch.Max(each => each.Most),
                before is { } last && at - last.At > longestSilence);
            before = point;
            yield return point;
        }
    }
}
