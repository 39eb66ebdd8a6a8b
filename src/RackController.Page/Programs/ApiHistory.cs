using System.Text.Json;
using RackController.Service;

namespace RackController.Page;

/// <summary>The past of one rack, as a program reads it: in the units that sensors measure in, whatever people are shown. It can be
/// thousands of points, so it is written as it is read.</summary>
internal static class ApiHistory
{
    /// <summary>Writes it.</summary>
    public static void Write(Utf8JsonWriter json, HistoryAsked asked, PastOfRack found)
    {
        var complaint = asked.Complaint
            ?? (asked.IsByDay && found.Trends.IsEmpty ? "No day of it is summed up yet: that is done once a day is over." : null);
        json.WriteStartObject();
        json.WriteString("rack", asked.Rack.Name);
        json.WriteString("from", ApiStatusOf.Time(asked.Span.From));
        json.WriteString("until", ApiStatusOf.Time(asked.Span.Until));
        json.WriteString("complaint", complaint);
        json.WriteStartArray("trends");
        foreach (var chart in found.Trends)
        {
            foreach (var trend in chart.Trends)
            {
                WriteTrend(json, chart.Kind, trend);
            }
        }

        json.WriteEndArray();
        json.WriteStartArray("loads");
        foreach (var load in found.Loads)
        {
            WriteLoad(json, load);
        }

        json.WriteEndArray();
        json.WriteStartArray("marks");
        foreach (var mark in found.Marks)
        {
            json.WriteStartObject();
            json.WriteString("at", ApiStatusOf.Time(mark.At));
            json.WriteBoolean("isAlarm", mark.IsAlarm);
            json.WriteString("what", mark.Words);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteTrend(Utf8JsonWriter json, ChartKind kind, SensorTrend trend)
    {
        json.WriteStartObject();
        json.WriteString("chart", kind.Key);
        json.WriteString("name", trend.Sensor);
        json.WriteString("unit", kind.Unit);
        json.WriteStartArray("points");
        foreach (var point in trend.Points)
        {
            json.WriteStartObject();
            json.WriteString("at", ApiStatusOf.Time(point.At));
            json.WriteNumber("least", point.Least);
            json.WriteNumber("mean", point.Mean);
            json.WriteNumber("most", point.Most);
            json.WriteBoolean("isAfterGap", point.IsAfterGap);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteLoad(Utf8JsonWriter json, LoadTimes load)
    {
        json.WriteStartObject();
        json.WriteString("load", load.Load);
        json.WriteStartArray("on");
        foreach (var on in load.On)
        {
            json.WriteStartObject();
            json.WriteString("from", ApiStatusOf.Time(on.From));
            json.WriteString("until", ApiStatusOf.Time(on.Until));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
