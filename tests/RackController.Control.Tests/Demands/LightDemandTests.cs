using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>Lights from 06:00 to 22:00 in New York.</summary>
public class LightDemandTests
{
    private static readonly Instant Six = Instant.FromUtc(2026, 6, 1, 10, 0);

    [Fact]
    public void LightsFollowThePhotoperiodOnTheScan()
    {
        var rig = new DemandRig(Sites.OneRack(), Six - Duration.FromHours(1));
        rig.Run(Duration.FromHours(30));
        Assert.Equal([Six, Six + Duration.FromHours(24)], rig.Comes("north/tier 1 light", SwitchState.On));
        Assert.Equal([Six + Duration.FromHours(16)], rig.Comes("north/tier 1 light", SwitchState.Off));
    }

    [Fact]
    public void EachTierComesOnAStaggerAfterTheOneBelow()
    {
        var site = Sites.OneRack(3).WithSchedule(schedule => schedule with { LightStagger = Duration.FromSeconds(90) });
        var rig = new DemandRig(site, Six - Duration.FromHours(1));
        rig.Run(Duration.FromHours(20));
        for (var tier = 1; tier <= 3; tier++)
        {
            var later = Duration.FromSeconds(90) * (tier - 1);
            Assert.Equal([Six + later], rig.Comes($"north/tier {tier} light", SwitchState.On));
            Assert.Equal([Six + Duration.FromHours(16) + later], rig.Comes($"north/tier {tier} light", SwitchState.Off));
        }
    }

    [Theory]
    [InlineData(12, -13, SwitchState.Off)]
    [InlineData(12, 11, SwitchState.Off)]
    [InlineData(18, -3, SwitchState.On)]
    [InlineData(-3, 4, SwitchState.On)]
    public void AStepOfTheClockSetsTheLightsToTheNewTimeAtTheNextScan(int hoursAfterSix, int stepHours, SwitchState state)
    {
        var rig = new DemandRig(Sites.OneRack(), Six + Duration.FromHours(hoursAfterSix));
        rig.Run(Duration.FromMinutes(1));
        rig.StepWall(Duration.FromHours(stepHours));
        rig.Scan();
        Assert.Equal(state, rig["north/tier 1 light"].State);
    }

    [Fact]
    public void ALightWithoutAPhotoperiodIsNeverLit()
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with { Lights = schedule.Lights.SetItem(1, null) });
        var rig = new DemandRig(site, Six);
        rig.Scan();
        Assert.Equal(Demand.Off(DemandCause.Dark), rig["north/tier 2 light"]);
        Assert.Equal(
            "the schedule never lights tier 2",
            rig.Demand.Words(rig["north/tier 2 light"], rig.Id("north/tier 2 light"), rig.Now.Monotonic));
    }

    [Fact]
    public void ALoadThatTheScheduleForgetsIsADefect()
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with { Runs = [] });
        Assert.Throws<InvariantBrokenException>(() => new DemandRig(site, Six));
    }
}
