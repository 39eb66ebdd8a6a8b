using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>The site as numbers over time, in the text format 0.0.4 of Prometheus.</summary>
internal static class Metrics
{
    /// <summary>Puts them on the map.</summary>
    public static void Map(IEndpointRouteBuilder routes, IServedRack rack) =>
        routes.MapGet("/metrics", context => WriteAsync(context, rack)).For(Role.View);

    private static async Task WriteAsync(HttpContext context, IServedRack rack)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        context.Response.ContentType = "text/plain; version=0.0.4; charset=utf-8";
        await context.Response.WriteAsync(Text(rack.Site, status), context.RequestAborted).ConfigureAwait(false);
    }

    /// <summary>A picture as text.</summary>
    public static string Text(Site site, SiteStatus status)
    {
        var page = new MetricsText();
        page.Begin("rackcontroller_load_on", "gauge", "Whether a load is told to be on.");
        foreach (var load in status.Loads)
        {
            page.Add("load", site[load.Load].Name, load.State == SwitchState.On ? 1 : 0);
        }

        AddReadings(page, status);
        page.Begin("rackcontroller_circuit_current_amperes", "gauge", "What a circuit carries, measured or by nameplates.");
        foreach (var circuit in site.Circuits)
        {
            page.Add("circuit", circuit.Name, CircuitLoad.Of(site, circuit, status).CurrentA);
        }

        page.Begin("rackcontroller_alarms", "gauge", "Alarms that are not normal, by priority.");
        foreach (var priority in Enum.GetValues<AlarmPriority>())
        {
            page.Add("priority", priority.InWords(), status.Alarms.Count(alarm => alarm.Priority == priority));
        }

        page.Begin("rackcontroller_rack_stopped", "gauge", "Whether somebody stopped a rack.");
        foreach (var rack in site.Racks)
        {
            page.Add("rack", rack.Name, status.Asked[rack.Id.Index].IsStopped ? 1 : 0);
        }

        page.Begin("rackcontroller_scans_total", "counter", "Scans since the start.");
        page.Add(status.Health.Scans);
        page.Begin("rackcontroller_late_scans_total", "counter", "Scans that were late.");
        page.Add(status.Health.Slips);
        AddLateness(page, status.Health.Lateness);
        page.Begin("rackcontroller_wall_clock_trusted", "gauge", "Whether the wall clock may be believed.");
        page.Add(status.At.WallTrusted ? 1 : 0);
        return page.ToString();
    }

    // Each unit is a metric of its own, and as Prometheus asks a base unit; a reading that may not be believed has no number.
    private static void AddReadings(MetricsText page, SiteStatus status)
    {
        foreach (var unit in status.Sensors.GroupBy(sensor => BaseUnit(ReadingWords.Unit(sensor.Sensor.Kind))))
        {
            page.Begin($"rackcontroller_reading_{unit.Key.Name}", "gauge", $"What sensors say, in {unit.Key.Name.Replace('_', ' ')}.");
            foreach (var sensor in unit.Where(sensor => sensor.Doubt is null))
            {
                page.Add("sensor", sensor.Sensor.Name, sensor.Reading.Value / unit.Key.Divisor);
            }
        }

        page.Begin("rackcontroller_reading_known", "gauge", "Whether a sensor may be believed.");
        foreach (var sensor in status.Sensors)
        {
            page.Add("sensor", sensor.Sensor.Name, sensor.Doubt is null ? 1 : 0);
        }
    }

    private static void AddLateness(MetricsText page, ScanLateness lateness)
    {
        page.Begin("rackcontroller_scan_lateness_seconds", "histogram", "How late scans began.");
        var within = 0L;
        for (var i = 0; i < lateness.Counts.Length; i++)
        {
            within += lateness.Counts[i];
            var end = i < lateness.ClassEnds.Length ? lateness.ClassEnds[i].TotalSeconds.ToString(CultureInfo.InvariantCulture) : "+Inf";
            page.Add("_bucket", "le", end, within);
        }

        page.AddPart("_sum", lateness.Total.TotalSeconds);
        page.AddPart("_count", within);
    }

    private static (string Name, double Divisor) BaseUnit(string unit) => unit switch
    {
        "mm" => ("metres", 1000),
        "A" => ("amperes", 1),
        "L/min" => ("litres_per_minute", 1),
        "\u00b0C" => ("celsius", 1),
        "%" => ("ratio", 100),
        "lx" => ("lux", 1),
        _ => ("contact", 1),
    };
}

/// <summary>Lines of the text format.</summary>
internal sealed class MetricsText
{
    private readonly StringBuilder text = new();
    private string name = "";

    /// <summary>Begins a metric.</summary>
    public void Begin(string metric, string type, string help)
    {
        name = metric;
        text.Append(CultureInfo.InvariantCulture, $"# HELP {metric} {help}\n# TYPE {metric} {type}\n");
    }

    /// <summary>Adds the only value of the metric.</summary>
    public void Add(double value) => text.Append(CultureInfo.InvariantCulture, $"{name} {value:R}\n");

    /// <summary>Adds a value with a label.</summary>
    public void Add(string label, string of, double value) => Add("", label, of, value);

    /// <summary>Adds a part of the metric that has a name of its own.</summary>
    public void AddPart(string part, double value) => text.Append(CultureInfo.InvariantCulture, $"{name}{part} {value:R}\n");

    /// <summary>Adds a part of the metric with a label.</summary>
    public void Add(string part, string label, string of, double value)
    {
        // What the format asks to be escaped in a label: backslash, quote and line feed.
        var escaped = of.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)
            .Replace("\n", "\\n", StringComparison.Ordinal);
        text.Append(CultureInfo.InvariantCulture, $"{name}{part}{{{label}=\"{escaped}\"}} {value:R}\n");
    }

    public override string ToString() => text.ToString();
}
