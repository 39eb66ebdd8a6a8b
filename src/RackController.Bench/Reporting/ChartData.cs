using System.Buffers;
using System.Text;
using System.Text.Json;
using NodaTime;
using NodaTime.TimeZones;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What the charts of a report are drawn from, as JSON inside the page. Times are seconds since the run began;
/// the page turns them into local time by the zone's offsets, so that a day of 23 hours is drawn as one. It can be millions of numbers,
/// so it is written as it is read.</summary>
internal static class ChartData
{
    public static string Of(RunResult result)
    {
        var written = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(written))
        {
            Write(json, result);
        }

        return Encoding.UTF8.GetString(written.WrittenSpan);
    }

    private static void Write(Utf8JsonWriter json, RunResult result)
    {
        var scenario = result.Scenario;
        json.WriteStartObject();
        json.WriteNumber("startEpochS", scenario.Start.ToUnixTimeSeconds());
        json.WriteNumber("lengthS", scenario.Length.TotalSeconds);
        WriteOffsets(json, scenario);
        json.WriteStartArray("racks");
        foreach (var rack in scenario.Site.Racks)
        {
            WriteRack(json, result, rack);
        }

        json.WriteEndArray();
        json.WriteStartArray("circuits");
        foreach (var circuit in scenario.Site.Circuits)
        {
            json.WriteStartObject();
            json.WriteString("name", circuit.Name);
            json.WriteNumber("limitA", circuit.ContinuousLimitA);
            json.WriteNumber("breakerA", circuit.BreakerA);
            WriteCurve(json, "current", result.Charts.Currents[circuit.Id.Index]);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteLoads(json, result);
        WriteMarks(json, result);
        json.WriteEndObject();
    }

    private static void WriteOffsets(Utf8JsonWriter json, Scenario scenario)
    {
        json.WriteStartArray("offsets");
        var days = scenario.Site.Zone.GetZoneIntervals(scenario.Start, scenario.Start + scenario.Length + Duration.FromDays(1));
        foreach (var interval in days)
        {
            json.WriteStartArray();
            json.WriteNumberValue(Since(scenario, interval));
            json.WriteNumberValue((double)interval.WallOffset.Seconds);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static double Since(Scenario scenario, ZoneInterval interval) =>
        interval.HasStart ? (interval.Start - scenario.Start).TotalSeconds : -1e12;

    private static void WriteRack(Utf8JsonWriter json, RunResult result, Rack rack)
    {
        var (charts, index) = (result.Charts, rack.Id.Index);
        json.WriteStartObject();
        json.WriteString("name", rack.Name);
        json.WriteStartArray("trays");
        foreach (var tier in rack.Tiers)
        {
            json.WriteStartObject();
            json.WriteNumber("tier", tier.Number);
            json.WriteNumber("standpipeMm", tier.Tray.StandpipeHeightMm);
            json.WriteNumber("rimMm", tier.Tray.RimDepthMm);
            WriteCurve(json, "depth", charts.Depths[index][tier.Number - 1]);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteCurve(json, "reservoir", charts.Reservoirs[index]);
        json.WriteNumber("capacityL", rack.Reservoir.CapacityL);
        WriteCurve(json, "waterC", charts.Warmth[index]);
        WriteCurve(json, "oxygenMgPerL", charts.Oxygen[index]);
        WriteCurve(json, "conductivityMsPerCm", charts.Conductivity[index], 4);
        json.WriteStartArray("vapourDeficitKPa");
        foreach (var trend in charts.VapourDeficits[index])
        {
            WriteCurve(json, trend);
        }

        json.WriteEndArray();
        WriteLowFloat(json, result.Scenario.Site, rack);
        json.WriteEndObject();
    }

    private static void WriteLowFloat(Utf8JsonWriter json, Site site, Rack rack)
    {
        if (site.Sensors.FirstOrDefault(sensor => sensor.Rack == rack.Id && sensor.Kind == SensorKind.ReservoirLowFloat) is { } lowFloat)
        {
            json.WriteNumber("lowFloatL", Math.Round(lowFloat.HeightMm * rack.Reservoir.AreaM2, 1));
        }
        else
        {
            json.WriteNull("lowFloatL");
        }
    }

    private static void WriteCurve(Utf8JsonWriter json, string name, Trend trend, int digits = 2)
    {
        json.WritePropertyName(name);
        WriteCurve(json, trend, digits);
    }

    private static void WriteCurve(Utf8JsonWriter json, Trend trend, int digits = 2)
    {
        json.WriteStartObject();
        json.WriteStartArray("s");
        foreach (var point in trend.Points)
        {
            json.WriteNumberValue(Math.Round(point.Seconds, 1));
        }

        json.WriteEndArray();
        json.WriteStartArray("v");
        foreach (var point in trend.Points)
        {
            json.WriteNumberValue(Math.Round(point.Value, digits));
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteLoads(Utf8JsonWriter json, RunResult result)
    {
        // Water first, then light from the top tier down as on the rack, then air.
        var ordered = result.Scenario.Site.Loads
            .OrderBy(load => load.Rack.Index).ThenBy(load => load.Kind).ThenByDescending(load => load.TierNumber ?? 0);
        json.WriteStartArray("loads");
        foreach (var load in ordered)
        {
            var stretches = result.Charts.Timeline.Of(load.Id);
            json.WriteStartObject();
            json.WriteString("name", load.Name);
            json.WriteString("kind", load.Kind.ToString().ToLowerInvariant());
            WriteLengths(json, "fromS", stretches.Select(stretch => stretch.From));
            WriteLengths(json, "forS", stretches.Select(stretch => stretch.Until - stretch.From));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLengths(Utf8JsonWriter json, string name, IEnumerable<Duration> lengths)
    {
        json.WriteStartArray(name);
        foreach (var length in lengths)
        {
            json.WriteNumberValue(length.TotalSeconds);
        }

        json.WriteEndArray();
    }

    private static void WriteMarks(Utf8JsonWriter json, RunResult result)
    {
        json.WriteStartArray("marks");
        foreach (var entry in result.Log.Where(entry => entry.Kind is null))
        {
            WriteMark(json, entry.Elapsed, entry.Subject, isAbnormal: false);
        }

        foreach (var verdict in result.Verdicts)
        {
            if (verdict.Failure is { } failure)
            {
                WriteMark(json, failure.Elapsed, $"not met: {verdict.Expectation.Name}", isAbnormal: true);
            }
        }

        foreach (var hazard in result.Hazards)
        {
            WriteMark(json, hazard.Elapsed, HazardWords.Title(hazard.Kind), isAbnormal: true);
        }

        json.WriteEndArray();
    }

    private static void WriteMark(Utf8JsonWriter json, Duration elapsed, string what, bool isAbnormal)
    {
        json.WriteStartObject();
        json.WriteNumber("atS", elapsed.TotalSeconds);
        json.WriteString("what", what);
        json.WriteBoolean("isAbnormal", isAbnormal);
        json.WriteEndObject();
    }
}
