using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>Schedules without a clock that can be trusted. Floods are due at 07:00, 13:00 and 19:00 in New York, eight hours
/// apart in the mean; lights are on from 06:00 for 16 hours.</summary>
public class UntrustedClockTests
{
    private static readonly Instant Seven = Instant.FromUtc(2026, 6, 1, 11, 0);
    private static readonly Instant Thirteen = Seven + Duration.FromHours(6);
    private static readonly Instant Boot = Instant.FromUtc(2000, 1, 1, 0, 0);

    [Fact]
    public void WhenNothingIsKnownThePhotoperiodAndTheSpacingBeginAtTheStart()
    {
        var rig = new DemandRig(Sites.OneRack(), Boot, trusted: false);
        rig.Run(Duration.FromHours(41));
        var light = rig.Comes("north/tier 1 light", SwitchState.On).Zip(rig.Comes("north/tier 1 light", SwitchState.Off));
        Assert.Equal((Boot, Boot + Duration.FromHours(16)), light.First());
        Assert.Equal(Boot + Duration.FromHours(24), rig.Comes("north/tier 1 light", SwitchState.On).Last());
        Assert.Equal(
            [8, 16, 24, 32, 40],
            rig.When(FloodEvent.Due).Select(at => (int)Math.Round((at - Boot).TotalHours)));
    }

    [Fact]
    public void WhenTrustIsLostFloodsKeepTheMeanSpacingFromTheLastOneAndLightsTheLastKnownTime()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(10));
        rig.RunUntil(Seven + Duration.FromHours(1));
        var began = rig.When(FloodEvent.Filling).Single();
        rig.Trust(false);
        rig.StepWall(Duration.FromDays(-3000));
        rig.Run(Duration.FromHours(20));
        var now = rig.Now.Wall;
        var real = Seven + Duration.FromHours(21);
        var due = rig.Events.Where(each => each.What == FloodEvent.Due).Skip(1).Select(each => real + (each.At.Wall - now));
        Assert.Equal([began + Duration.FromHours(8), began + Duration.FromHours(16) + DemandRig.Grid * 2], due);
        var off = real + (rig.Comes("north/tier 1 light", SwitchState.Off).Last() - now);
        Assert.Equal(Instant.FromUtc(2026, 6, 2, 2, 0), off);
    }

    [Fact]
    public void ABootWithoutAClockGoesOnFromTheLastTimeKnown()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(10));
        rig.RunUntil(Seven + Duration.FromHours(1));
        var began = rig.When(FloodEvent.Filling).Single();
        var again = new DemandRig(Sites.OneRack(), Boot, trusted: false, rig.Save());
        again.Scan();
        Assert.Equal(SwitchState.On, again["north/tier 1 light"].State);
        again.Run(Duration.FromHours(16));

        // 08:00 was the last time known; it gets dark 14 h later, and the flood comes 8 h after the last.
        Assert.Equal(Boot + Duration.FromHours(14), again.Comes("north/tier 1 light", SwitchState.Off).Single());
        Assert.Equal(
            began + Duration.FromHours(8) - (Seven + Duration.FromHours(1)), again.When(FloodEvent.Due).First() - Boot);
    }

    [Fact]
    public void AClockThatIsSetSoonAfterBootMakesUpForTheFloodMissedInTheOutage()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromHours(2));
        rig.RunUntil(Seven - Duration.FromHours(1));
        var again = new DemandRig(Sites.OneRack(), Boot, trusted: false, rig.Save());
        again.Run(Duration.FromSeconds(40));
        Assert.Empty(again.Events);
        again.StepWall(Seven + Duration.FromHours(1) - again.Now.Wall);
        again.Trust(true);
        again.Run(Duration.FromMinutes(1));
        Assert.Single(again.When(FloodEvent.Filling));
        Assert.Contains("missed", again.Events[0].Because, StringComparison.Ordinal);
    }

    [Fact]
    public void AFloodAtTheMeanSpacingStandsForTheOneOfTheScheduleThatItLiesNextTo()
    {
        // The flood of the untrusted time begins at 12:50 by the real clock, which is set at 12:55.
        var rig = AtFirstSpacedFlood();
        rig.Run(Duration.FromMinutes(5));
        rig.StepWall(Thirteen - Duration.FromMinutes(5) - rig.Now.Wall);
        rig.Trust(true);
        rig.RunUntil(Thirteen + Duration.FromHours(1));
        Assert.Single(rig.When(FloodEvent.Filling));
        rig.RunUntil(Thirteen + Duration.FromHours(7));
        Assert.Equal(2, rig.When(FloodEvent.Filling).Count());
    }

    [Fact]
    public void AFloodAtTheMeanSpacingFarFromTheScheduleLeavesItAlone()
    {
        // The flood of the untrusted time began at 08:55 by the real clock, which is set at 12:55.
        var rig = AtFirstSpacedFlood();
        rig.Run(Duration.FromHours(4));
        rig.StepWall(Thirteen - Duration.FromMinutes(5) - rig.Now.Wall);
        rig.Trust(true);
        rig.RunUntil(Thirteen + Duration.FromHours(1));
        Assert.Equal(2, rig.When(FloodEvent.Filling).Count());
    }

    [Fact]
    public void ATrustThatComesAndGoesAddsNoFlood()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(10));
        for (var minute = 0; minute < 300; minute++)
        {
            rig.Run(Duration.FromMinutes(1));
            rig.Trust(minute % 2 == 0);
        }

        Assert.Single(rig.When(FloodEvent.Due));
    }

    [Fact]
    public void TheNextFloodCanBeLeftOutWithoutAClockToo()
    {
        var rig = new DemandRig(Sites.OneRack(), Boot, trusted: false);
        rig.Scan();
        Assert.True(rig.Demand.TrySkipNext(rig.Now, rig, out var answer));
        Assert.Equal("the next flood will be left out", answer);
        rig.Run(Duration.FromHours(17));
        Assert.Equal(Boot + Duration.FromHours(8), rig.When(FloodEvent.LeftOut).Single());
        Assert.Equal(Boot + Duration.FromHours(16), rig.When(FloodEvent.Due).Single());
    }

    [Fact]
    public void AFloodAtTheMeanSpacingThatStillWaitedIsDueAtOnceAfterARestart()
    {
        var rig = new DemandRig(Sites.OneRack(), Boot, trusted: false) { PumpMayRun = _ => false };
        rig.Run(Duration.FromHours(9));
        var again = new DemandRig(Sites.OneRack(), Boot, trusted: false, rig.Save());
        again.Run(Duration.FromMinutes(1));
        Assert.Single(again.When(FloodEvent.Filling));
    }

    [Fact]
    public void ABoardWithoutAClockThatIsCutOffEveryHourStillFloods()
    {
        var rig = new DemandRig(Sites.OneRack(), Boot, trusted: false);
        for (var hour = 0; hour < 20; hour++)
        {
            var memory = rig.Save();
            var version = rig.Demand.MemoryVersion;
            for (var minute = 0; minute < 59; minute++)
            {
                rig.Run(Duration.FromMinutes(1));
                if (rig.Demand.MemoryVersion != version)
                {
                    (memory, version) = (rig.Save(), rig.Demand.MemoryVersion);
                }
            }

            rig = new DemandRig(Sites.OneRack(), Boot, trusted: false, memory);
        }

        Assert.Equal(2, rig.Demand.FloodNumber);
    }

    [Fact]
    public void AFloodBeforeARestartWithoutAClockCountsForNothingOnceTheClockIsSet()
    {
        // How long the controller was away is unknown: it may have been a day.
        var rig = AtFirstSpacedFlood();
        rig.Run(Duration.FromMinutes(30));
        var again = new DemandRig(Sites.OneRack(), Boot, trusted: false, rig.Save());
        again.Run(Duration.FromMinutes(1));
        again.StepWall(Thirteen - Duration.FromMinutes(1) - again.Now.Wall);
        again.Trust(true);
        again.RunUntil(Thirteen + Duration.FromMinutes(1));
        Assert.Single(again.When(FloodEvent.Due), Thirteen);
    }

    private static DemandRig AtFirstSpacedFlood()
    {
        var rig = new DemandRig(Sites.OneRack(), Boot, trusted: false);
        rig.Run(Duration.FromHours(8) + Duration.FromSeconds(1));
        Assert.Equal(FloodPhase.Filling, rig.Demand.Phase);
        return rig;
    }
}
