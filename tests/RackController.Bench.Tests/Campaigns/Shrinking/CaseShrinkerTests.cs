using RackController.Bench.Tests.Scenarios.Writing;
using RackController.Bench.Tests.Support;
using RackController.Control;
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
        var scenario = AsStuck(Mopped());
        var run = ScenarioRun.Run(scenario);
        var again = ScenarioRun.Run(ScenarioWriterTests.ReadBack(scenario));
        Assert.Equal(LogText.Fingerprint(run), LogText.Fingerprint(again));
        Assert.Contains(run.Log, entry => entry.What.StartsWith("floor-mopped", StringComparison.Ordinal));
    }

    [Fact]
    public void TheScenarioOfAStuckRackPassesOnceItFloodsAgainAndNothingIsLeftToDo()
    {
        var result = ScenarioRun.Run(ScenarioWriterTests.ReadBack(AsStuck(Mopped())));
        var verdict = Assert.Single(result.Verdicts);
        Assert.True(verdict.IsMet, verdict.Failure?.Seen);
    }

    [Fact]
    public void TheScenarioOfAStuckRackFailsOnTheBenchThoughItsTraysWereWetWithinItsSchedule()
    {
        // The person mops and acknowledges, but never resets: a latch stays.
        var outcome = Mopped();
        var withoutReset = outcome with { Deeds = [.. outcome.Deeds.Where(deed => deed is not PersonAsks { Request: ResetLatch })] };
        var result = ScenarioRun.Run(ScenarioWriterTests.ReadBack(AsStuck(withoutReset)));
        Assert.Contains("an alarm stands", Assert.Single(result.Verdicts).Failure!.Seen, StringComparison.Ordinal);
    }

    // Two minutes of leak into the drip tray: the person mops and resets, and the rack floods again.
    private static CaseOutcome Mopped() => DemoCampaigns
        .Run(new CampaignPlan(DemoCampaigns.FourTier, new CampaignOptions { Only = ["tray-leaks"] }))
        .First(one => one.Deeds.Length > 3);

    private static Scenario AsStuck(CaseOutcome outcome) => CaseScenario.Of(
        DemoCampaigns.FourTier, outcome with { Class = FailureClass.Stuck }, "told",
        ShippedFiles.PathTo("config/demo-four-tier.yaml"), "a test");

    private static CaseOutcome Smallest()
    {
        var failed = DemoCampaigns.Run(plan).First(outcome => outcome.Failed);
        return CaseShrinker.Shrink(plan.Site, plan.Days, failed);
    }
}
