using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests;

public sealed class RackChartTests
{
    [Fact]
    public void CausesGoDownAndLoadsAcross()
    {
        var site = Sites.OneRack();
        var chart = RackChart.Of(site, site.Racks[0]);
        Assert.Equal(["pump", "valves", "lights", "fan", "aerator"], chart.Columns.Select(column => column.Title));
        Assert.Equal(["safe", "safe", "safe", "safe", "safe"], Effects(chart, "scan-fault"));
        Assert.Equal(["off", "off", "", "", ""], Effects(chart, "high-water"));
        Assert.Equal(["off", "", "", "", ""], Effects(chart, "low-float"));
        Assert.Equal(["off", "off", "off", "off", "off"], Effects(chart, "supply-lost"));
        Assert.Equal(["", "", "", "", ""], Effects(chart, "flood-held"));
    }

    [Theory]
    [InlineData(new[] { 1, 2 }, "off there")]
    [InlineData(new[] { 2 }, "off: tier 2")]
    public void WhatActsAtATierSaysSo(int[] tiers, string effect)
    {
        var site = WithAirSensors(Sites.OneRack(), tiers);
        Assert.Equal(["", "", effect, "", ""], Effects(RackChart.Of(site, site.Racks[0]), "air-too-hot"));
    }

    [Fact]
    public void ARackShowsItsOwnCircuitAndNoOther()
    {
        var charts = RackChart.AllOf(Sites.ManyRacks(2, racksToACircuit: 1) with { Name = "two" });
        Assert.All(charts, chart => Assert.Equal("12 A", chart.Lines.Single(line => line.Row.Id == "circuit-shed").Settings));
        Assert.All(charts, chart => Assert.Contains(
            chart.Lacking, gap => gap.Row.Id == "air-too-hot" && gap.Place == chart.Rack.Name));
    }

    [Fact]
    public void NamesCannotBreakOutOfADocument()
    {
        var site = Sites.OneRack() with { Name = "a <b> & | c" };
        var charts = RackChart.AllOf(site);
        Assert.Contains("a &lt;b&gt; &amp; | c", ChartHtml.Of(charts), StringComparison.Ordinal);
        Assert.DoesNotContain("<b> &", ChartHtml.Of(charts), StringComparison.Ordinal);
        Assert.Contains("a <b> & \\| c", ChartMarkdown.Of(charts), StringComparison.Ordinal);
    }

    private static string[] Effects(RackChart chart, string row) =>
        [.. chart.Lines.Single(line => line.Row.Id == row).Effects];

    private static Site WithAirSensors(Site site, int[] tiers) => site with
    {
        Sensors = site.Sensors.AddRange(tiers.Select((tier, i) => new Sensor
        {
            Id = new SensorId(site.Sensors.Length + i),
            Name = $"north/tier {tier} air temperature",
            Kind = SensorKind.AirTemperature,
            Rack = new RackId(0),
            TierNumber = tier,
            PlausibleMin = -20,
            PlausibleMax = 60,
            StaleAfter = NodaTime.Duration.FromSeconds(30),
        })),
    };
}
