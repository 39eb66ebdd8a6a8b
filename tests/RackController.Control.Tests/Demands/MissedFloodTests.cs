using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>Clock steps, outages and restarts. Floods are due at 07:00, 13:00 and 19:00 in New York.</summary>
public class MissedFloodTests
{
    private static readonly Instant Seven = Instant.FromUtc(2026, 6, 1, 11, 0);
    private static readonly Instant Thirteen = Seven + Duration.FromHours(6);
    private static readonly Site Skipping = Sites.OneRack().WithSchedule(schedule => schedule with
    {
        Floods = schedule.Floods with { Missed = MissedFloods.Skip },
    });

    [Fact]
    public void AFloodThatIsDueAtTheVeryStartRuns()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven);
        rig.Run(Duration.FromMinutes(1));
        Assert.Single(rig.When(FloodEvent.Filling));
    }

    [Fact]
    public void ARackThatWasNeverDrivenHasMissedNothing()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven + Duration.FromMinutes(1));
        rig.Run(Duration.FromHours(5));
        Assert.Empty(rig.Events);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void AClockSetBackALittleNeverRepeatsAFlood(int hours)
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(30));
        rig.RunUntil(Seven + Duration.FromHours(1));
        rig.StepWall(Duration.FromHours(-hours));
        rig.RunUntil(Thirteen - Duration.FromMinutes(1));
        Assert.Single(rig.When(FloodEvent.Due));
        rig.Run(Duration.FromMinutes(2));
        Assert.Equal(2, rig.When(FloodEvent.Due).Count());
    }

    [Fact]
    public void AClockSetBackByManyHoursWasWrongBeforeSoItsFloodsCountForNothing()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(30));
        rig.RunUntil(Seven + Duration.FromHours(1));
        rig.StepWall(Duration.FromHours(-4));
        rig.RunUntil(Seven + Duration.FromMinutes(1));
        Assert.Equal(2, rig.When(FloodEvent.Due).Count());
    }

    [Fact]
    public void AClockSetBackAgainAndAgainCountsLikeOneLargeStep()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(30));
        rig.RunUntil(Seven + Duration.FromHours(1));
        for (var step = 0; step < 3; step++)
        {
            rig.StepWall(Duration.FromHours(-2));
            rig.Run(Duration.FromMinutes(1));
        }

        rig.RunUntil(Seven + Duration.FromMinutes(1));
        Assert.Equal(2, rig.When(FloodEvent.Due).Count());
    }

    [Fact]
    public void AClockSetForwardALittleFloodsLate()
    {
        var rig = new DemandRig(Skipping, Seven - Duration.FromMinutes(2));
        rig.Scan();
        rig.StepWall(Duration.FromMinutes(6));
        rig.Run(Duration.FromMinutes(1));
        Assert.Equal("the schedule floods at 07:00", rig.Events[0].Because);
    }

    [Fact]
    public void AClockSetForwardOverTwoFloodsRunsOne()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(30));
        rig.Scan();
        rig.StepWall(Duration.FromHours(8));
        rig.Run(Duration.FromHours(1));
        Assert.Single(rig.When(FloodEvent.Filling));
        Assert.Equal("2 floods, the last at 13:00, were missed and one flood makes up for it", rig.Events[0].Because);
    }

    [Theory]
    [InlineData(MissedFloods.RunOne, 1)]
    [InlineData(MissedFloods.Skip, 0)]
    public void AfterAnOutageThePolicyDecides(MissedFloods policy, int floods)
    {
        var site = policy == MissedFloods.Skip ? Skipping : Sites.OneRack();
        var rig = Restarted(site, Seven - Duration.FromHours(1), Seven + Duration.FromHours(1));
        rig.Run(Duration.FromHours(1));
        Assert.Equal(floods, rig.When(FloodEvent.Filling).Count());
        Assert.Equal(1 - floods, rig.When(FloodEvent.LeftOut).Count());
    }

    [Fact]
    public void AnOutageOfAMinuteMakesAFloodLateNotMissed()
    {
        var rig = Restarted(Skipping, Seven - Duration.FromMinutes(1), Seven + Duration.FromMinutes(1));
        rig.Run(Duration.FromMinutes(1));
        Assert.Single(rig.When(FloodEvent.Filling));
    }

    [Fact]
    public void AFloodThatARestartCutsWhileItFillsIsTriedOnceMore()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(1));
        rig.RunUntil(Seven + Duration.FromMinutes(2));
        var second = new DemandRig(Sites.OneRack(), Seven + Duration.FromMinutes(3), memory: rig.Save());
        second.RunUntil(Seven + Duration.FromMinutes(20));
        Assert.Equal(["draining", "due", "drained", "filling"], second.Events.Select(each => each.What));
        Assert.Equal(1, second.Demand.FloodNumber);

        var third = new DemandRig(Sites.OneRack(), Seven + Duration.FromMinutes(21), memory: second.Save());
        third.RunUntil(Thirteen - Duration.FromMinutes(1));
        Assert.Equal(["draining", "drained"], third.Events.Select(each => each.What));
    }

    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    public void ASecondTryThatHasNotBegunSurvivesARestart(int minutesLater)
    {
        // Cut after two minutes; at five its trays still drain, at twenty it waits for the pump.
        var cut = Seven + Duration.FromMinutes(2);
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(1)) { PumpMayRun = now => now.Wall < cut };
        rig.RunUntil(cut);
        rig.RunUntil(Seven + Duration.FromMinutes(minutesLater));
        Assert.Single(rig.When(FloodEvent.CutShort));

        var again = new DemandRig(Sites.OneRack(), Seven + Duration.FromMinutes(minutesLater + 1), memory: rig.Save());
        again.RunUntil(Thirteen - Duration.FromMinutes(1));

        Assert.Single(again.When(FloodEvent.Filling));
        Assert.Equal(1, again.Demand.FloodNumber);
    }

    [Theory]
    [InlineData(7)]
    [InlineData(20)]
    public void AFloodThatFilledIsNotRepeatedAfterARestartButItsTraysDrainAnew(int minutes)
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(1));
        rig.RunUntil(Seven + Duration.FromMinutes(minutes));
        var again = new DemandRig(Sites.OneRack(), Seven + Duration.FromMinutes(minutes + 1), memory: rig.Save());
        Assert.Equal(FloodPhase.Draining, again.Demand.Phase);
        again.RunUntil(Thirteen - Duration.FromMinutes(1));
        Assert.Equal(["draining", "drained"], again.Events.Select(each => each.What));
        Assert.Equal(
            again.When(FloodEvent.Draining).Single() + Duration.FromMinutes(15), again.When(FloodEvent.Drained).Single());
        Assert.Equal(1, again.Demand.FloodNumber);
    }

    [Fact]
    public void AFloodThatStillWaitedIsFoundDueAgainAfterARestart()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(1)) { PumpMayRun = _ => false };
        rig.RunUntil(Seven + Duration.FromMinutes(2));
        var again = new DemandRig(Sites.OneRack(), Seven + Duration.FromMinutes(3), memory: rig.Save());
        again.Run(Duration.FromMinutes(1));
        Assert.Single(again.When(FloodEvent.Filling));
    }

    [Fact]
    public void AFloodThatBeganLateStandsForTheNextAlsoAfterARestart()
    {
        // Cut off over 07:00 until 12:40, which is nearer to 13:00, and once more at 12:55.
        var before = new DemandRig(Sites.OneRack(), Seven - Duration.FromHours(1));
        before.Scan();
        var late = new DemandRig(Sites.OneRack(), Thirteen - Duration.FromMinutes(20), memory: before.Save());
        late.Run(Duration.FromMinutes(14));
        Assert.Single(late.When(FloodEvent.Filling));

        var again = new DemandRig(Sites.OneRack(), Thirteen - Duration.FromMinutes(5), memory: late.Save());
        again.RunUntil(Thirteen + Duration.FromHours(1));
        Assert.Empty(again.When(FloodEvent.Filling));
        Assert.Single(again.When(FloodEvent.LeftOut));
        again.RunUntil(Thirteen + Duration.FromHours(7));
        Assert.Single(again.When(FloodEvent.Filling));
    }

    [Fact]
    public void AFloodThatMergedWithTheOneUnderWayIsNotFoundDueAgainAfterARestart()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(2));
        rig.Scan();
        rig.Demand.TryFloodNow(rig.Now, rig, out _);
        rig.RunUntil(Seven + Duration.FromMinutes(6));
        Assert.Single(rig.When(FloodEvent.Merged));
        var again = new DemandRig(Sites.OneRack(), Seven + Duration.FromMinutes(7), memory: rig.Save());
        again.Run(Duration.FromHours(1));
        Assert.Empty(again.When(FloodEvent.Due));
    }

    [Fact]
    public void AMadeUpFloodLateInTheDayStandsForTheNextOne()
    {
        var rig = Restarted(Sites.OneRack(), Seven - Duration.FromHours(1), Thirteen - Duration.FromMinutes(20));
        rig.RunUntil(Thirteen + Duration.FromHours(1));
        Assert.Single(rig.When(FloodEvent.Filling));
        Assert.Single(rig.When(FloodEvent.LeftOut), Thirteen);
    }

    [Fact]
    public void ALongOutageCountsAWeekOfFloodsAndRunsOne()
    {
        var rig = Restarted(
            Sites.OneRack(), Seven - Duration.FromHours(1), Seven + Duration.FromDays(400) + Duration.FromHours(1));
        rig.Run(Duration.FromHours(1));
        Assert.Single(rig.When(FloodEvent.Filling));
        Assert.StartsWith("21 floods, the last at 07:00, were missed", rig.Events[0].Because, StringComparison.Ordinal);
    }

    private static DemandRig Restarted(Site site, Instant stops, Instant starts)
    {
        var rig = new DemandRig(site, stops - Duration.FromMinutes(10));
        rig.RunUntil(stops);
        return new DemandRig(site, starts, memory: rig.Save());
    }
}
