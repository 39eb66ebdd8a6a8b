using RackController.Model;
using RackController.Service;
using NodaTime;

namespace RackController.Page;

/// <summary>The past of a rack as a table for a spreadsheet: a row for each stretch of time, with what each sensor said and for how long
/// each load was on.</summary>
internal static class HistoryFile
{
    /// <summary>Its rows, the header first.</summary>
    public static IEnumerable<IEnumerable<string>> Rows(PastOfRack past, HistorySpan span, Site site)
    {
        var trends = past.Trends.SelectMany(chart => chart.Trends.Select(trend => (Trend: trend, chart.Kind.Unit))).ToList();
        yield return
        [
            "time",
            .. trends.SelectMany(at => Heads(at.Trend.Sensor, at.Unit)),
            .. past.Loads.Select(load => $"{load.Load} on (s)"),
        ];
        var rows = TrendTable.Of([.. trends.Select(at => at.Trend)], span, SensorTrend.MostPoints);
        foreach (var row in rows.IsEmpty ? Whole(span) : rows)
        {
            yield return
            [
                Csv.Time(row.From, site.Zone),
                .. row.Points.SelectMany(point => (string[])[Csv.Number(point?.Least), Csv.Number(point?.Mean), Csv.Number(point?.Most)]),
                .. past.Loads.Select(load => Csv.Number(OnWithin(load, new HistorySpan(row.From, row.Until)).TotalSeconds)),
            ];
        }
    }

    private static string[] Heads(string sensor, string unit) =>
        [$"{sensor} least ({unit})", $"{sensor} mean ({unit})", $"{sensor} greatest ({unit})"];

    // Where no sensor said anything, loads are told all the same.
    private static IEnumerable<TrendRow> Whole(HistorySpan span) => Enumerable.Range(0, SensorTrend.MostPoints)
        .Select(place => new TrendRow(span.BeginOf(place, SensorTrend.MostPoints), span.BeginOf(place + 1, SensorTrend.MostPoints), []));

    private static Duration OnWithin(LoadTimes load, HistorySpan stretch) => load.On.Aggregate(Duration.Zero, (sum, on) =>
        sum + Duration.Max(Duration.Zero, Instant.Min(on.Until, stretch.Until) - Instant.Max(on.From, stretch.From)));
}
