using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using RackController.Bench.Tests.Support;

namespace RackController.Bench.Tests.Reporting;

public sealed partial class ReportTests
{
    private static readonly Lazy<RunResult> Failed = new(() => Scenes.Run(
        "start: 2026-03-02 06:30\nlength: 2 h\nexpect:\n  - that: the pump <rests> & sleeps\n    always: { load: north/pump, is: off }\n"
        + "  - that: the light shines\n    always: { load: north/tier 1 light, is: on }\n    from: 5 min\n"));

    [Fact]
    public void JUnitHasACaseForEachExpectationAndEachHazard()
    {
        var suite = XElement.Parse(JUnitReport.Of(Failed.Value)).Element("testsuite")!;

        Assert.Equal("7", suite.Attribute("tests")!.Value);
        Assert.Equal("1", suite.Attribute("failures")!.Value);
        Assert.Equal(7, suite.Elements("testcase").Count());
        var failed = suite.Elements("testcase").Single(test => test.Element("failure") is not null);
        Assert.Equal("the pump <rests> & sleeps", failed.Attribute("name")!.Value);
        Assert.Contains("2026-03-02 07:00:00.0 +00:00: north/pump is told to be on", failed.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void JsonSaysWhatHappenedInNumbersWithUnits()
    {
        using var json = JsonDocument.Parse(JsonReport.Of(Failed.Value));
        var root = json.RootElement;

        Assert.False(root.GetProperty("passed").GetBoolean());
        Assert.Equal("2026-03-02T07:00:00Z", root.GetProperty("expectations")[0].GetProperty("failure").GetProperty("at").GetString());
        Assert.InRange(root.GetProperty("floods")[0].GetProperty("pumpRanS").GetDouble(), 590, 610);
        Assert.Equal(LogText.Fingerprint(Failed.Value), root.GetProperty("eventLog").GetString());
    }

    [Fact]
    public void EveryReportSaysWhatEachCircuitGaveAndItIsWhatItsLoadsDrew()
    {
        using var json = JsonDocument.Parse(JsonReport.Of(Failed.Value));
        var circuit = Assert.Single(json.RootElement.GetProperty("circuits").EnumerateArray());
        var energyKWh = circuit.GetProperty("energyKWh").GetDouble();

        Assert.Equal("cellar sockets", circuit.GetProperty("circuit").GetString());
        Assert.Equal(Failed.Value.Loads.Sum(load => load.EnergyKWh), energyKWh, 1e-4);
        Assert.Contains($"cellar sockets: {energyKWh:0.0} kWh drawn", HtmlReport.Of(Failed.Value), StringComparison.Ordinal);
        Assert.Equal([$"cellar sockets: {energyKWh:0.0} kWh drawn"], TotalsWords.Energy(Failed.Value));
    }

    [Fact]
    public void ASiteOfSeveralCircuitsIsAlsoSaidInAll()
    {
        var one = Failed.Value.Circuits[0];
        var two = Failed.Value with { Circuits = [one with { EnergyKWh = 1.26 }, one with { EnergyKWh = 2.5 }] };
        Assert.Equal("3.8 kWh drawn in all", TotalsWords.Energy(two).Last());
    }

    [Fact]
    public void EveryReportSaysHowTheWaterWas()
    {
        using var json = JsonDocument.Parse(JsonReport.Of(Failed.Value));
        var rack = Assert.Single(json.RootElement.GetProperty("racks").EnumerateArray());
        var reservoir = Failed.Value.Racks[0].Reservoir;

        Assert.Equal(reservoir.LowestOxygenMgPerL, rack.GetProperty("oxygenLowestMgPerL").GetDouble(), 0.005);
        Assert.Equal(reservoir.WarmestC, rack.GetProperty("waterWarmestC").GetDouble(), 0.05);
        Assert.Equal(reservoir.ConductivityMsPerCm, rack.GetProperty("conductivityAtEndMsPerCm").GetDouble(), 0.0005);
        var words = TotalsWords.Reservoir(Failed.Value, Failed.Value.Racks[0]);
        Assert.StartsWith("north: water at most 19", words, StringComparison.Ordinal);
        Assert.Contains(Html.Text(words), HtmlReport.Of(Failed.Value), StringComparison.Ordinal);
    }

    [Fact]
    public void ThePageLeadsWithItsVerdictAndEncodesWhatPeopleWrote()
    {
        var page = WithoutScripts(HtmlReport.Of(Failed.Value));

        Assert.True(page.IndexOf("Did not hold", StringComparison.Ordinal) < page.IndexOf("What had to hold", StringComparison.Ordinal));
        Assert.Contains("the pump &lt;rests&gt; &amp; sleeps", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<rests>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("{{", page, StringComparison.Ordinal);
    }

    [Fact]
    public void ThePageFetchesNothing()
    {
        var page = HtmlReport.Of(Failed.Value);

        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
        Assert.Empty(Fetching().Matches(WithoutScripts(page)));
        Assert.DoesNotContain("<link", page[..page.IndexOf("</head>", StringComparison.Ordinal)], StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameRunGivesTheSamePage() => Assert.Equal(HtmlReport.Of(Failed.Value), HtmlReport.Of(Failed.Value));

    private static string WithoutScripts(string page) => Script().Replace(page, "");

    [GeneratedRegex("<script.*?</script>", RegexOptions.Singleline)]
    private static partial Regex Script();

    [GeneratedRegex("(src|href|srcset|action)\\s*=|url\\(|@import")]
    private static partial Regex Fetching();
}
