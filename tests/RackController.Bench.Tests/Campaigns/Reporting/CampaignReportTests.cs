using System.Text.Json;
using System.Xml.Linq;
using RackController.Bench.Tests.Support;

namespace RackController.Bench.Tests.Campaigns.Reporting;

public sealed class CampaignReportTests
{
    private static readonly CampaignFindings findings = Found();

    [Fact]
    public void ThePageNamesEveryFailureItsScenarioAndTheCommand()
    {
        var page = CampaignHtml.Of(findings);
        Assert.All(findings.Failures, group => Assert.Contains(Html.Text(group.Words), page, StringComparison.Ordinal));
        Assert.Contains("failure-01.yaml", page, StringComparison.Ordinal);
        Assert.Contains(findings.Command, page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http", page.Replace("http-equiv", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void TheJsonSaysTheSame()
    {
        var json = JsonDocument.Parse(CampaignJson.Of(findings)).RootElement;
        Assert.False(json.GetProperty("passed").GetBoolean());
        Assert.Equal(findings.Outcomes.Length, json.GetProperty("cases").GetInt32());
        Assert.Equal(findings.Failures.Length, json.GetProperty("failures").GetArrayLength());
        Assert.Equal(1, json.GetProperty("modes").GetArrayLength());
    }

    [Fact]
    public void TheXmlCountsItsFailures()
    {
        var suite = XDocument.Parse(CampaignJUnit.Of(findings)).Root!.Element("testsuite")!;
        Assert.Equal(suite.Elements("testcase").Count(), (int)suite.Attribute("tests")!);
        Assert.Equal(suite.Descendants("failure").Count(), (int)suite.Attribute("failures")!);
    }

    [Fact]
    public void EveryFailureIsGroupedUnderItsModeAndHazard()
    {
        var group = Assert.Single(findings.Failures);
        Assert.Equal("tray leaks: Water on the floor", group.Words);
        Assert.Equal(findings.Outcomes.Count(outcome => outcome.Failed), group.Count);
    }

    private static CampaignFindings Found()
    {
        var plan = new CampaignPlan(DemoCampaigns.Bare, new CampaignOptions { Only = ["tray-leaks"], QuietYears = 0 });
        return CampaignFindings.Of(plan, "rack.yaml", "campaign rack.yaml --seed 1", DemoCampaigns.Run(plan), 1, CancellationToken.None);
    }
}
