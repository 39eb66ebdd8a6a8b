using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What the charts of the past are drawn from: values in the units that the grower is shown, times in seconds since
/// 1970-01-01T00:00Z. It can be thousands of points, so it is written as it is read.</summary>
internal static class ChartData
{
    /// <summary>Writes it.</summary>
    public static void Write(Utf8JsonWriter json, PastOfRack past, HistorySpan span, Site site)
    {
        // The axes go by the offset at the end of the span.
        var offset = site.Zone.GetUtcOffset(span.Until);
        var note = site.Zone.GetUtcOffset(span.From) == offset ? "" : $"the clocks changed: all times as at the end, UTC{offset}";
        json.WriteStartObject();
        json.WriteNumber("fromS", span.From.ToUnixTimeSeconds());
        json.WriteNumber("untilS", span.Until.ToUnixTimeSeconds());
        json.WriteNumber("offsetS", offset.Seconds);
        json.WriteString("axisNote", note);
        json.WriteStartArray("charts");
        foreach (var (kind, trends) in past.Trends)
        {
            WriteChart(json, kind.Key, trends, site.Units.Of(kind.Unit));
        }

        json.WriteEndArray();
        json.WriteStartArray("loads");
        foreach (var load in past.Loads)
        {
            WriteLoad(json, load);
        }

        json.WriteEndArray();
        json.WriteStartArray("marks");
        foreach (var mark in past.Marks)
        {
            json.WriteStartObject();
            json.WriteNumber("atS", Seconds(mark.At));
            json.WriteBoolean("isAlarm", mark.IsAlarm);
            json.WriteString("words", mark.Words);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteChart(Utf8JsonWriter json, string key, ImmutableArray<SensorTrend> trends, ShownUnit unit)
    {
        json.WriteStartObject();
        json.WriteString("key", key);
        json.WriteString("unit", unit.Symbol);
        json.WriteStartArray("series");
        foreach (var trend in trends)
        {
            json.WriteStartObject();
            json.WriteString("name", trend.Sensor);
            WriteTimes(json, trend);
            WriteValues(json, "least", trend, point => unit.From(point.Least));
            WriteValues(json, "mean", trend, point => unit.From(point.Mean));
            WriteValues(json, "most", trend, point => unit.From(point.Most));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    // Where nothing was known, a point without a value interrupts the line.
    private static bool IsInterrupted(SensorTrend trend, int at) => at > 0 && trend.Points[at].IsAfterGap;

    private static void WriteTimes(Utf8JsonWriter json, SensorTrend trend)
    {
        json.WriteStartArray("atS");
        for (var at = 0; at < trend.Points.Length; at++)
        {
            if (IsInterrupted(trend, at))
            {
                json.WriteNumberValue(Seconds(trend.Points[at - 1].At) + 1);
            }

            json.WriteNumberValue(Seconds(trend.Points[at].At));
        }

        json.WriteEndArray();
    }

    private static void WriteValues(Utf8JsonWriter json, string name, SensorTrend trend, Func<TrendPoint, double> valueOf)
    {
        json.WriteStartArray(name);
        for (var at = 0; at < trend.Points.Length; at++)
        {
            if (IsInterrupted(trend, at))
            {
                json.WriteNullValue();
            }

            json.WriteNumberValue(Math.Round(valueOf(trend.Points[at]), 3));
        }

        json.WriteEndArray();
    }

    private static void WriteLoad(Utf8JsonWriter json, LoadTimes load)
    {
        json.WriteStartObject();
        json.WriteString("name", load.Load);
        json.WriteStartArray("onS");
        foreach (var on in load.On)
        {
            json.WriteStartArray();
            json.WriteNumberValue(Seconds(on.From));
            json.WriteNumberValue(Seconds(on.Until));
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static double Seconds(Instant at) => Math.Round((at - NodaConstants.UnixEpoch).TotalSeconds);
}
