using RackController.Bench.Tests.Scenarios.Writing;
using RackController.Bench.Tests.Support;
using RackController.Testing;

namespace RackController.Bench.Tests.Campaigns.Shrinking;

public sealed class CaseShrinkerTests
{
    private static readonly CampaignPlan plan =
        new(DemoCampaigns.Bare, new CampaignOptions { Only = ["tray-leaks", "air-humidity-noisy"] });

    [Fact]
    public void AFailureShrinksToTheFaultThatMattersAtAPlainTimeAndSize()
    {
        var smallest = Smallest();
        var fault = Assert.Single(smallest.Case.Faults);
        Assert.Equal("tray-leaks", fault.Instance.Mode.Id);
        Assert.Equal(fault.Instance.Mode.Sizes!.Plain, fault.Size);
        Assert.Equal(HazardKind.WaterOnTheFloor, smallest.Hazards[0].Kind);
    }

    [Fact]
    public void TheScenarioOfAFailureFailsInTheSameWayOnTheBench()
    {
        var smallest = Smallest();
        var scenario = CaseScenario.Of(plan.Site, smallest, "failure-01", ShippedFiles.PathTo("config/demo-four-tier.yaml"), "a test");
        var result = ScenarioRun.Run(scenario);
        Assert.False(result.Passed);
        Assert.Equal(smallest.Hazards[0].Seen, result.Hazards[0].Seen);
        Assert.Equal(smallest.Hazards[0].Elapsed, result.Hazards[0].Elapsed);
        Assert.All(result.Verdicts, verdict => Assert.False(verdict.IsMet));
        Assert.Equal(scenario.Events.AsEnumerable(), ScenarioWriterTests.ReadBack(scenario).Events.AsEnumerable());
    }

    [Fact]
    public void WhatThePersonDidIsPartOfTheScenarioAndComesToTheSameLog()
    {
        // Two minutes of leak into the drip tray: the person mops and resets, and the rack floods again.
        var whole = new CampaignPlan(DemoCampaigns.FourTier, new CampaignOptions { Only = ["tray-leaks"] });
        var outcome = DemoCampaigns.Run(whole).First(one => one.Deeds.Length > 3);
        var scenario = CaseScenario.Of(
            whole.Site, outcome with { Class = FailureClass.Stuck }, "told", ShippedFiles.PathTo("config/demo-four-tier.yaml"), "a test");
        var run = ScenarioRun.Run(scenario);
        var again = ScenarioRun.Run(ScenarioWriterTests.ReadBack(scenario));
        Assert.Equal(LogText.Fingerprint(run), LogText.Fingerprint(again));
        Assert.Contains(run.Log, entry => entry.What.StartsWith("floor-mopped", StringComparison.Ordinal));
    }

    private static CaseOutcome Smallest()
    {
        var failed = DemoCampaigns.Run(plan).First(outcome => outcome.Failed);
        return CaseShrinker.Shrink(plan.Site, plan.Days, failed);
    }
}
