using RackController.Bench.Tests.Support;
using RackController.Plant;

namespace RackController.Bench.Tests.Campaigns;

public sealed class CampaignTests
{
    private static readonly CampaignOptions some = new() { RackDays = 40, Pairs = false };

    [Fact]
    public void TheSameSeedComesToTheSameWhateverTheThreadsDo()
    {
        var first = DemoCampaigns.Run(new CampaignPlan(DemoCampaigns.FourTier, some));
        var second = DemoCampaigns.Run(new CampaignPlan(DemoCampaigns.FourTier, some));
        Assert.Equal(first.Select(Told), second.Select(Told));
    }

    [Fact]
    public void AnotherSeedDrawsOtherMomentsOfTheSameCases()
    {
        var first = new CampaignPlan(DemoCampaigns.FourTier, some).Draw(3)!;
        var second = new CampaignPlan(DemoCampaigns.FourTier, some with { Seed = 2 }).Draw(3)!;
        Assert.Equal(first.Name, second.Name);
        Assert.NotEqual(first.Faults[0], second.Faults[0]);
    }

    [Fact]
    public void ShardsShareTheCasesWithoutGapOrOverlap()
    {
        var options = new CampaignOptions { Only = ["weep-blocked", "leak-rope-dead"] };
        IEnumerable<string> Names(CampaignPlan plan) =>
            Enumerable.Range(0, plan.Count).Select(plan.Draw).OfType<CampaignCase>().Select(drawn => drawn.Name);
        var whole = Names(new CampaignPlan(DemoCampaigns.FourTier, options)).ToList();
        var parts = Enumerable.Range(1, 3).SelectMany(number =>
            Names(new CampaignPlan(DemoCampaigns.FourTier, options with { Shard = new Shard(number, 3) }))).ToList();
        Assert.Equal(whole.Order(StringComparer.Ordinal), parts.Order(StringComparer.Ordinal));
        Assert.NotEmpty(whole);
    }

    // Whoever waits for a deadline that falls on a scan must not wait at it for ever.
    [Fact]
    public void ARackThatNothingSavesComesToTheEndOfItsCases()
    {
        var plan = new CampaignPlan(DemoCampaigns.First, new CampaignOptions { Only = ["breaker-opens"] });
        Assert.All(DemoCampaigns.Run(plan), outcome => Assert.NotEqual(FailureClass.Crash, outcome.Class));
    }

    // Nothing there tells that the supply is gone but the tiers that stay dark.
    [Fact]
    public void WhomADarkTierSendsToTheGroundFaultProtectionSetsItAndTheRackFloodsAgain()
    {
        var plan = new CampaignPlan(DemoCampaigns.TwoTier, new CampaignOptions { Only = ["light-leaks-current-to-earth"] });
        var outcomes = DemoCampaigns.Run(plan);

        Assert.Contains(outcomes, outcome => outcome.Acted.Contains(WiredBackstop.GroundFaultProtection));
        Assert.All(outcomes, outcome => Assert.NotEqual(FailureClass.Stuck, outcome.Class));
    }

    [Fact]
    public void ACaseStrikesInThePhaseThatItIsNamedFor()
    {
        var plan = new CampaignPlan(DemoCampaigns.FourTier, new CampaignOptions { Only = ["air-humidity-frozen"] });
        for (var index = 0; index < plan.Count; index++)
        {
            var drawn = plan.Draw(index)!;
            var run = new VirtualRun(plan.Site, drawn.Start, drawn.Events, PlantStart.Default, profile: null);
            run.Begin();
            var strikes = Model.MonotonicTime.Zero + drawn.Faults[0].At;
            while (run.Step(strikes))
            {
                Assert.True(run.Now.Elapsed <= drawn.Faults[0].At);
            }

            var phase = run.Now.Flood(plan.Site.Racks[0].Id);
            Control.FloodPhase? expected = drawn.Phase switch
            {
                CasePhase.Filling => Control.FloodPhase.Filling,
                CasePhase.Soaking => Control.FloodPhase.Soaking,
                CasePhase.Draining => Control.FloodPhase.Draining,
                CasePhase.Idle or CasePhase.Dark or CasePhase.LightsOn or CasePhase.LightsOff => Control.FloodPhase.Idle,
                _ => null,
            };
            Assert.True(expected is null || phase == expected, $"{drawn.Name}: {phase}");
        }
    }

    // The demo rack's own modes at one phase each, and a few pairs: the whole of it is for the verb.
    [Fact]
    public void NothingInTheCatalogueFloodsTheFloorBurnsThePumpOrOverloadsTheCircuit()
    {
        var plan = new CampaignPlan(DemoCampaigns.FourTier, new CampaignOptions { Shard = new Shard(3, 11) });
        var outcomes = DemoCampaigns.Run(new CampaignPlan(plan.Site, plan.Options with { RackDays = 260 }));
        Assert.True(outcomes.Length > 200);
        var failed = outcomes.Where(outcome => outcome.Class is FailureClass.Hazard or FailureClass.Stuck or FailureClass.Crash);
        Assert.Empty(failed.Select(outcome => $"{outcome.Class}: {outcome.Case.Name}: {outcome.Seen}"));
    }

    /// <summary>The flood that was under way as the clock was set right stands for the next one of the schedule: that is one flood
    /// fewer, and no rack that is stuck.</summary>
    [Fact]
    public void AFloodThatBeganByTheWrongClockMayStandForTheNext() => Assert.All(
        DemoCampaigns.Run(new CampaignPlan(
            DemoCampaigns.FourTier, new CampaignOptions { Only = ["wired-time-relay-hangs", "board-boots-behind-its-time"] })),
        outcome => Assert.Equal("", outcome.Seen));

    /// <summary>A contactor and a relay that have both welded leave the controller nothing to open.</summary>
    [Fact]
    public void WhatOnlyTheTimeRelayInThePumpsWireStopsIsSaidToBeSo()
    {
        var outcomes = DemoCampaigns.Run(new CampaignPlan(
            DemoCampaigns.FourTier, new CampaignOptions { Only = ["pump-relay-welded", "contactor-welded"] }));
        Assert.DoesNotContain(outcomes, outcome => outcome.Failed);
        var stopped = outcomes.Where(outcome => outcome.Prevented.Any(each => each.By == WiredBackstop.TimeCutout)).ToList();
        Assert.NotEmpty(stopped);
        Assert.All(stopped, outcome => Assert.Equal(HazardKind.PumpPastItsMaximumRun, outcome.Prevented[0].Otherwise.Kind));
        var use = Assert.Single(BackstopUse.Of(outcomes), use => use.Backstop == WiredBackstop.TimeCutout);
        Assert.Equal(stopped.Count, use.Prevented);
        Assert.Contains("ran on past its maximum of 15 min, although it was told to be off", use.Otherwise, StringComparison.Ordinal);
    }

    private static string Told(CaseOutcome outcome) =>
        $"{outcome.Case.Name} {outcome.Case.Start} {outcome.Class} {outcome.Seen} {outcome.ToAlarm} {outcome.ToTrip} {outcome.Length}";
}
