using System.Text.Json;
using RackController.Bench.Tests.Support;

namespace RackController.Bench.Tests.Reporting;

public sealed class AdviceReportTests
{
    private static readonly Lazy<RunResult> Day = new(() => Scenes.Run(
        "start: 2026-03-02 06:30\nlength: 2 h\nexpect:\n"
        + "  - that: the aerator runs\n    always: { load: north/aerator, is: on }\n    from: 1 min\n"));

    [Fact]
    public void TheSurveyForetellsTheFloodThatTheBenchRuns()
    {
        // In a run the crop has drunk since the last flood and water evaporates, so a tray may be some seconds later.
        var flood = Assert.Single(Day.Value.Floods);
        var survey = Assert.Single(Day.Value.FloodAdvice).Survey;

        Assert.All(flood.Trays.Zip(survey.Tiers), pair =>
        {
            Assert.Equal(pair.First.Filled!.Value.TotalSeconds, pair.Second.Filled!.Value.TotalSeconds, 5.0);
            Assert.Equal(pair.First.PeakMm, pair.Second.SettledMm, 1.0);
            Assert.Equal(pair.First.Drained!.Value.TotalSeconds, pair.Second.Drained!.Value.TotalSeconds, 15.0);
        });
    }

    [Fact]
    public void ThePageAndTheJsonShowIt()
    {
        var page = HtmlReport.Of(Day.Value);
        using var json = JsonDocument.Parse(JsonReport.Of(Day.Value));
        var advice = json.RootElement.GetProperty("floodAdvice")[0];
        var survey = Day.Value.FloodAdvice[0].Survey;

        Assert.Contains("What a flood does", page, StringComparison.Ordinal);
        Assert.All(FloodWording.Rows(survey), row => Assert.Contains($"<td>{row[1]}</td>", page, StringComparison.Ordinal));
        Assert.Equal("north", advice.GetProperty("rack").GetString());
        Assert.Equal(survey.Tiers[3].FlowLpm, advice.GetProperty("tiers")[3].GetProperty("flowLpm").GetDouble(), 0.01);
        Assert.Equal(0, advice.GetProperty("wrong").GetArrayLength());
    }
}
