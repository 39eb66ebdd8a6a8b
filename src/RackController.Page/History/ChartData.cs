using System.Collections.Immutable;
using System.Text.Json.Serialization;
using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What the charts of the past are drawn from. Times are seconds since 1970-01-01T00:00Z.</summary>
/// <param name="FromS">When the span begins.</param>
/// <param name="UntilS">When it ends.</param>
/// <param name="OffsetS">How far the local time at its end is ahead of UTC, in seconds: the axes go by it.</param>
/// <param name="AxisNote">What must be known to read the times; empty where they are just local.</param>
/// <param name="Charts">A chart for each unit.</param>
/// <param name="Loads">When loads were on; empty where that is not asked for.</param>
/// <param name="Marks">Floods and alarms.</param>
internal sealed record ChartData(
    long FromS, long UntilS, int OffsetS, string AxisNote, ImmutableArray<ChartOfUnit> Charts, ImmutableArray<ChartLoad> Loads,
    ImmutableArray<ChartMark> Marks)
{
    /// <summary>Makes it, in the units that the grower is shown.</summary>
    public static ChartData Of(PastOfRack past, HistorySpan span, Site site)
    {
        var zone = site.Zone;
        var offset = zone.GetUtcOffset(span.Until);
        var note = zone.GetUtcOffset(span.From) == offset ? "" : $"the clocks changed: all times as at the end, UTC{offset}";
        return new ChartData(
            span.From.ToUnixTimeSeconds(), span.Until.ToUnixTimeSeconds(), offset.Seconds, note,
            [.. past.Trends.Select(chart => Chart(chart.Kind.Key, site.Units.Of(chart.Kind.Unit), chart.Trends))],
            [.. past.Loads.Select(Load)],
            [.. past.Marks.Select(mark => new ChartMark(Seconds(mark.At), mark.IsAlarm, mark.Words))]);
    }

    private static ChartLoad Load(LoadTimes load) =>
        new(load.Load, [.. load.On.Select(on => new[] { Seconds(on.From), Seconds(on.Until) })]);

    private static ChartOfUnit Chart(string key, ShownUnit unit, IEnumerable<SensorTrend> trends) =>
        new(key, unit.Symbol, [.. trends.Select(trend => Series(trend, unit))]);

    private static ChartSeries Series(SensorTrend trend, ShownUnit unit)
    {
        // Where nothing was known, a point without a value interrupts the line.
        var points = trend.Points.SelectMany((point, at) => point.IsAfterGap && at > 0 ? new TrendPoint?[] { null, point } : [point]);
        var (at, least, mean, most) = (new List<double>(), new List<double?>(), new List<double?>(), new List<double?>());
        foreach (var point in points)
        {
            at.Add(point is { } known ? Seconds(known.At) : at[^1] + 1);
            least.Add(Shown(point?.Least));
            mean.Add(Shown(point?.Mean));
            most.Add(Shown(point?.Most));
        }

        double? Shown(double? value) => value is { } known ? Math.Round(unit.From(known), 3) : null;

        return new ChartSeries(trend.Sensor, at, least, mean, most);
    }

    private static double Seconds(Instant at) => Math.Round((at - NodaConstants.UnixEpoch).TotalSeconds);
}

/// <summary>Values of one unit.</summary>
/// <param name="Key">Which chart.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Series">A line for each sensor.</param>
internal sealed record ChartOfUnit(string Key, string Unit, ImmutableArray<ChartSeries> Series);

/// <summary>What one sensor said: values at times, null where nothing is known.</summary>
/// <param name="Name">The sensor.</param>
/// <param name="AtS">The times.</param>
/// <param name="Least">The least value of each stretch.</param>
/// <param name="Mean">The mean.</param>
/// <param name="Most">The greatest.</param>
internal sealed record ChartSeries(string Name, List<double> AtS, List<double?> Least, List<double?> Mean, List<double?> Most);

/// <summary>When a load was on.</summary>
/// <param name="Name">The load.</param>
/// <param name="OnS">From when until when, each time.</param>
internal sealed record ChartLoad(string Name, ImmutableArray<double[]> OnS);

/// <summary>A flood or an alarm.</summary>
/// <param name="AtS">When.</param>
/// <param name="IsAlarm">Whether it is an alarm.</param>
/// <param name="Words">What happened.</param>
internal sealed record ChartMark(double AtS, bool IsAlarm, string Words);

/// <summary>How the data of charts is written, without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ChartData))]
internal sealed partial class ChartJson : JsonSerializerContext;
