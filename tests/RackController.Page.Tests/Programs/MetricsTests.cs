using System.Globalization;
using System.Text.RegularExpressions;

namespace RackController.Page.Tests;

/// <summary>The text format 0.0.4 of Prometheus: what its documentation asks of names, help, type and labels.</summary>
public sealed partial class MetricsTests
{
    [Fact]
    public async Task EveryLineIsOfTheFormat()
    {
        await using var served = await ServedRack.OfFileAsync();

        using var answer = await served.Client.GetAsync("/metrics");
        var text = await answer.Content.ReadAsStringAsync();

        Assert.Equal("text/plain; version=0.0.4; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
        Assert.EndsWith("\n", text, StringComparison.Ordinal);
        Assert.All(text.TrimEnd('\n').Split('\n'), line => Assert.Matches(line[0] == '#' ? Comment() : Sample(), line));
    }

    // Prometheus' own judge, which also asks for base units and for what its conventions say of names.
    [FactWithPromtool]
    public async Task PromtoolFindsNothing()
    {
        await using var served = await ServedRack.OfFileAsync("demo-three-racks.yaml");

        Assert.Equal("", await Promtool.ComplaintsAsync(await served.Client.GetStringAsync("/metrics")));
    }

    [FactWithPromtool]
    public async Task PromtoolFindsAUnitThatIsNoBaseUnit()
    {
        var complaints = await Promtool.ComplaintsAsync("# HELP it_millimeters It.\n# TYPE it_millimeters gauge\nit_millimeters 1\n");

        Assert.Contains("base unit", complaints, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EveryMetricIsExplainedOnceAndBeforeItsValues()
    {
        await using var served = await ServedRack.OfFileAsync();

        var lines = (await served.Client.GetStringAsync("/metrics")).TrimEnd('\n').Split('\n');

        var explained = new List<string>();
        foreach (var line in lines)
        {
            if (line.StartsWith("# TYPE ", StringComparison.Ordinal))
            {
                explained.Add(line.Split(' ')[2]);
            }
            else if (line[0] != '#')
            {
                Assert.StartsWith(explained[^1], line.Split('{', ' ')[0], StringComparison.Ordinal);
            }
        }

        Assert.Equal(explained.Count, explained.Distinct().Count());
    }

    // As Prometheus has it: classes add up, the last is without end and holds all.
    [Fact]
    public async Task TheHistogramHoldsEveryScan()
    {
        await using var served = await ServedRack.OfFileAsync();
        await served.SeeAsync(status => status.Health.Scans > 5);

        var lines = (await served.Client.GetStringAsync("/metrics")).Split('\n');

        var classes = lines.Where(line => line.StartsWith("rackcontroller_scan_lateness_seconds_bucket", StringComparison.Ordinal))
            .Select(line => long.Parse(line.Split(' ')[1], CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(classes.Order(), classes);
        Assert.Contains($"rackcontroller_scan_lateness_seconds_count {classes[^1]}", lines);
        Assert.Contains($"rackcontroller_scans_total {classes[^1]}", lines);
        Assert.Contains($"rackcontroller_scan_lateness_seconds_bucket{{le=\"+Inf\"}} {classes[^1]}", lines);
    }

    [Fact]
    public void ALabelThatHoldsQuotesAndLinesIsEscaped()
    {
        var page = new MetricsText();
        page.Begin("it", "gauge", "It.");
        page.Add("name", "a\"b\\c\nd", 1);

        Assert.EndsWith("it{name=\"a\\\"b\\\\c\\nd\"} 1\n", page.ToString(), StringComparison.Ordinal);
    }

    [GeneratedRegex("^# (HELP [a-z_]+ .+|TYPE [a-z_]+ (gauge|counter|histogram))$")]
    private static partial Regex Comment();

    [GeneratedRegex("""^[a-z_]+(\{[a-z_]+="([^"\\\n]|\\["\\n])*"\})? -?[0-9.E+-]+$""")]
    private static partial Regex Sample();
}
