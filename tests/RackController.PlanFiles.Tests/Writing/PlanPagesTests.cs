using System.Text.Json;
using RackController.Growing;

namespace RackController.PlanFiles.Tests;

public sealed class PlanPagesTests
{
    private const string Trick = "<script>alert(1)</script><img src=x onerror=alert(1)>";

    [Fact]
    public void WhateverANameSaysItIsTextOnEveryPage()
    {
        var plan = Orders.Plan(Trick);
        foreach (var page in (string[])[PlanHtml.Of(plan, Orders.Forecast(plan)), LabelsHtml.Of(plan)])
        {
            Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("<img", page, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("&lt;script&gt;", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void TheReportNamesWhatIsNotMetWithItsReasonAndItsRemedy()
    {
        var page = PlanHtml.Of(Orders.Plan(), Orders.Forecast(Orders.Plan()));
        Assert.Contains("Because tiers are full.", page, StringComparison.Ordinal);
        Assert.Contains("Remedy: 1 more tier.", page, StringComparison.Ordinal);
        Assert.Contains("To meet all of them: 1 more tier like north/tier 1 from 2 to 8 Mar.", page, StringComparison.Ordinal);
    }

    [Fact]
    public void TheReportIsHeadedByWhatIsMet()
    {
        var plan = Orders.Plan();
        Assert.Contains("</span> The one delivery is not met</h1>", PlanHtml.Of(plan, Orders.Forecast(plan)), StringComparison.Ordinal);
        var idle = plan with { Request = plan.Request with { Orders = [] }, Batches = [], Shortfalls = [], Remedy = [] };
        Assert.Contains("</span> Nothing is due within the plan</h1>", PlanHtml.Of(idle, Orders.Forecast(idle)), StringComparison.Ordinal);
    }

    [Fact]
    public void EveryTaskStandsOnTheReport()
    {
        var plan = Orders.Plan();
        var page = PlanHtml.Of(plan, Orders.Forecast(plan));
        Assert.All(
            PlanTasks.With(plan, Orders.Forecast(plan)), task => Assert.Contains(TaskWords.Sentence(task), page, StringComparison.Ordinal));
    }

    [Fact]
    public void EveryTrayThatIsStillToBeSownHasALabel()
    {
        var plan = Orders.Plan();
        var labels = LabelsHtml.Of(plan).Split("<div class=\"label\">").Length - 1;
        Assert.Equal(plan.Batches.Sum(one => one.Batch.Trays), labels);
    }

    [Fact]
    public void ProgramsFindTheBatchItsDaysAndItsTasks()
    {
        var plan = Orders.Plan();
        using var json = JsonDocument.Parse(PlanJson.Of(plan, Orders.Forecast(plan)));
        var batch = json.RootElement.GetProperty("batches")[0];
        Assert.Equal("PEA-1", batch.GetProperty("lot").GetString());
        Assert.Equal($"{plan.Batches[0].Timing.Harvest:uuuu-MM-dd}", batch.GetProperty("harvest").GetString());
        Assert.Equal(PlanTasks.With(plan, Orders.Forecast(plan)).Length, json.RootElement.GetProperty("tasks").GetArrayLength());
    }

    [Fact]
    public void ATrayOfSeveralTiersIsDrawnOnceForEachOfItsDays()
    {
        var plan = Orders.Plan();
        Assert.Equal(plan.Batches[0].Batch.Trays, Strips.Of(plan).Count());
        Assert.Equal(plan.Batches[0].Batch.Trays, Strips.Of(plan).Select(bar => bar.Strip).Distinct().Count());
    }
}
