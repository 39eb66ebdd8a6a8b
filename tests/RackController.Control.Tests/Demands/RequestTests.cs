using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>What people ask for, at 06:30 in New York; floods are due at 07:00, 13:00 and 19:00.</summary>
public class RequestTests
{
    private static readonly Instant Seven = Instant.FromUtc(2026, 6, 1, 11, 0);

    private readonly DemandRig rig = new(Sites.OneRack(), Seven - Duration.FromMinutes(30));

    public RequestTests() => rig.Scan();

    [Fact]
    public void AFloodOnRequestLeavesTheScheduleAsItIs()
    {
        Assert.True(rig.Demand.TryFloodNow(rig.Now, rig, out var answer));
        Assert.Equal("a flood begins as soon as the pump may start", answer);
        rig.Run(Duration.FromHours(1));
        Assert.Equal(["a person asked for a flood", "the schedule floods at 07:00"],
            rig.Events.Where(each => each.What == FloodEvent.Due).Select(each => each.Because));
    }

    [Fact]
    public void ASecondFloodOnRequestIsRefusedWhileOneWaitsOrIsUnderWay()
    {
        rig.PumpMayRun = _ => false;
        rig.Demand.TryFloodNow(rig.Now, rig, out _);
        Assert.False(rig.Demand.TryFloodNow(rig.Now, rig, out var answer));
        Assert.Equal("a flood already waits to begin", answer);
        rig.PumpMayRun = _ => true;
        rig.Run(Duration.FromMinutes(1));
        Assert.False(rig.Demand.TryFloodNow(rig.Now, rig, out answer));
        Assert.Equal("a flood is already under way", answer);
    }

    [Fact]
    public void LeavingOutTheNextFloodTwiceLeavesOutOne()
    {
        Assert.True(rig.Demand.TrySkipNext(rig.Now, rig, out _));
        Assert.True(rig.Demand.TrySkipNext(rig.Now, rig, out var answer));
        Assert.Equal("the flood at 07:00 will be left out", answer);
        rig.RunUntil(Seven + Duration.FromHours(13));
        Assert.Equal(["left out", "due", "due"], Named(FloodEvent.LeftOut, FloodEvent.Due));
        Assert.Equal("a person asked to leave out the flood at 07:00", rig.Events[0].Because);
    }

    [Fact]
    public void LeavingOutAFloodThatWaitsDropsThatOne()
    {
        rig.PumpMayRun = _ => false;
        rig.RunUntil(Seven + Duration.FromMinutes(1));
        Assert.True(rig.Demand.TrySkipNext(rig.Now, rig, out var answer));
        Assert.Equal("the flood that waits is left out", answer);
        Assert.Equal(FloodPhase.Idle, rig.Demand.Phase);

        // Nor is it found due again after a restart.
        var again = new DemandRig(Sites.OneRack(), rig.Now.Wall + Duration.FromMinutes(1), memory: rig.Save());
        again.Run(Duration.FromMinutes(1));
        Assert.Empty(again.Events);
        rig.PumpMayRun = _ => true;
        rig.RunUntil(Seven + Duration.FromHours(7));
        Assert.Equal(["due", "left out", "due"], Named(FloodEvent.LeftOut, FloodEvent.Due));
    }

    [Fact]
    public void LeavingOutAFloodThatWaitsForTheTraysToDrainDropsThatOne()
    {
        rig.Demand.TryFloodNow(rig.Now, rig, out _);
        rig.Run(Duration.FromMinutes(15));
        Assert.Equal(FloodPhase.Draining, rig.Demand.Phase);
        Assert.True(rig.Demand.TryFloodNow(rig.Now, rig, out var answer));
        Assert.Equal("a flood follows as soon as the trays have drained", answer);
        Assert.True(rig.Demand.TrySkipNext(rig.Now, rig, out _));
        rig.RunUntil(Seven - Duration.FromMinutes(1));
        Assert.Single(rig.When(FloodEvent.Filling));
        Assert.Equal(FloodPhase.Idle, rig.Demand.Phase);
    }

    [Fact]
    public void TheWishToLeaveOutAFloodSurvivesARestart()
    {
        rig.Demand.TrySkipNext(rig.Now, rig, out _);
        var again = new DemandRig(Sites.OneRack(), rig.Now.Wall, memory: rig.Save());
        again.RunUntil(Seven + Duration.FromHours(7));
        Assert.Single(again.When(FloodEvent.Due), Seven + Duration.FromHours(6));
    }

    [Fact]
    public void ARackAtRestHasNoFloodToLeaveOut()
    {
        var resting = new DemandRig(
            Sites.OneRack().WithSchedule(schedule => schedule with { Floods = schedule.Floods with { Times = new NoFloods() } }),
            Seven);
        resting.Run(Duration.FromDays(1));
        Assert.False(resting.Demand.TrySkipNext(resting.Now, resting, out var answer));
        Assert.Equal("the schedule has no floods to leave out", answer);
        Assert.Empty(resting.Events);
        Assert.True(resting.Demand.TryFloodNow(resting.Now, resting, out _));
        resting.Run(Duration.FromMinutes(1));
        Assert.Equal(FloodPhase.Filling, resting.Demand.Phase);
    }

    [Fact]
    public void ATierOutOfUseHasNeitherLightNorWater()
    {
        Assert.True(rig.Demand.TrySetTierInUse(2, false, out var answer));
        Assert.Equal("tier 2 is now out of use", answer);
        rig.RunUntil(Seven + Duration.FromMinutes(1));
        Assert.Equal(FloodPhase.Filling, rig.Demand.Phase);
        Assert.Equal(SwitchState.On, rig["north/tier 1 light"].State);
        Assert.Equal(SwitchState.On, rig["north/tier 1 valve"].State);
        Assert.Equal(Demand.Off(DemandCause.TierOutOfUse), rig["north/tier 2 light"]);
        Assert.Equal(Demand.Off(DemandCause.TierOutOfUse), rig["north/tier 2 valve"]);
    }

    [Fact]
    public void ARackWithEveryTierOutOfUseHasNoFloods()
    {
        rig.Demand.TrySetTierInUse(1, false, out _);
        rig.Demand.TrySetTierInUse(2, false, out _);
        rig.RunUntil(Seven + Duration.FromHours(1));
        Assert.Equal(["left out"], rig.Events.Select(each => each.What));
        Assert.Equal(Demand.Off(DemandCause.TierOutOfUse), rig["north/pump"]);
        Assert.False(rig.Demand.TryFloodNow(rig.Now, rig, out var answer));
        Assert.Equal("every tier is out of use", answer);
    }

    [Fact]
    public void AFloodLeftOutBecauseNoTierWasInUseIsNotFoundDueAgainAfterARestart()
    {
        rig.Demand.TrySetTierInUse(1, false, out _);
        rig.Demand.TrySetTierInUse(2, false, out _);
        rig.RunUntil(Seven + Duration.FromMinutes(1));
        rig.Demand.TrySetTierInUse(1, true, out _);
        var again = new DemandRig(Sites.OneRack(), Seven + Duration.FromMinutes(2), memory: rig.Save());
        again.Run(Duration.FromHours(1));
        Assert.Empty(again.Events);
    }

    [Fact]
    public void AFloodIsCutShortWhenTheLastTierGoesOutOfUse()
    {
        rig.RunUntil(Seven + Duration.FromMinutes(1));
        rig.Demand.TrySetTierInUse(1, false, out _);
        rig.Demand.TrySetTierInUse(2, false, out _);
        rig.Scan();
        Assert.Equal(FloodPhase.Draining, rig.Demand.Phase);
        Assert.Equal(SwitchState.Off, rig["north/pump"].State);
    }

    [Fact]
    public void ATierThatIsNotThereIsRefused()
    {
        Assert.False(rig.Demand.TrySetTierInUse(3, false, out var answer));
        Assert.Equal("north has no tier 3; its tiers are 1 to 2", answer);
    }

    [Fact]
    public void WhatAPersonSaidOfATierSurvivesARestartButAnEditedFileGoesFirst()
    {
        rig.Demand.TrySetTierInUse(2, false, out _);
        var memory = rig.Save();
        Assert.False(new DemandRig(Sites.OneRack(), rig.Now.Wall, memory: memory).Demand.IsTierInUse(2));

        rig.Demand.TrySetTierInUse(2, true, out _);
        var edited = Sites.OneRack().WithRack(rack => rack with
        {
            Tiers = rack.Tiers.SetItem(1, rack.Tiers[1] with { InUse = false }),
        });
        Assert.False(new DemandRig(edited, rig.Now.Wall, memory: rig.Save()).Demand.IsTierInUse(2));
    }

    [Fact]
    public void EveryChangeThatMustBeRememberedRaisesTheMemoryVersion()
    {
        var versions = new List<long> { rig.Demand.MemoryVersion };
        rig.Demand.TrySetTierInUse(2, false, out _);
        versions.Add(rig.Demand.MemoryVersion);
        rig.Demand.TrySkipNext(rig.Now, rig, out _);
        versions.Add(rig.Demand.MemoryVersion);
        rig.Demand.TryFloodNow(rig.Now, rig, out _);
        versions.Add(rig.Demand.MemoryVersion);
        rig.Run(Duration.FromSeconds(1));
        versions.Add(rig.Demand.MemoryVersion);
        Assert.Equal(versions.Distinct().Order(), versions);
        rig.Run(Duration.FromMinutes(1));
        Assert.Equal(versions[^1], rig.Demand.MemoryVersion);
    }

    private IEnumerable<string> Named(params string[] names) =>
        rig.Events.Select(each => each.What).Where(names.Contains);
}
