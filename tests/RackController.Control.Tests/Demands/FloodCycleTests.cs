using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

public class FloodCycleTests
{
    /// <summary>06:30 in New York, half an hour before a flood.</summary>
    private static readonly Instant Morning = Instant.FromUtc(2026, 6, 1, 10, 30);

    private static readonly Instant Seven = Instant.FromUtc(2026, 6, 1, 11, 0);

    [Fact]
    public void AFloodFillsSoaksAndDrainsForItsTimes()
    {
        var rig = new DemandRig(Sites.OneRack(), Morning);
        rig.Run(Duration.FromHours(2));
        Assert.Equal(["due", "filling", "soaking", "draining", "drained"], rig.Events.Select(each => each.What));
        var filling = rig.When(FloodEvent.Filling).Single();
        Assert.Equal(Seven, rig.When(FloodEvent.Due).Single());
        Assert.Equal(Duration.FromMinutes(5), rig.When(FloodEvent.Soaking).Single() - filling);
        Assert.Equal(Duration.FromMinutes(10), rig.When(FloodEvent.Draining).Single() - filling);
        Assert.Equal(Duration.FromMinutes(25), rig.When(FloodEvent.Drained).Single() - filling);
    }

    [Fact]
    public void TheValvesOpenBeforeThePumpStartsAndCloseWhenItStops()
    {
        var rig = new DemandRig(Sites.OneRack(), Morning);
        rig.Run(Duration.FromHours(2));
        var pumpOn = rig.Comes("north/pump", SwitchState.On).Single();
        var pumpOff = rig.Comes("north/pump", SwitchState.Off).Last();
        foreach (var valve in new[] { "north/tier 1 valve", "north/tier 2 valve" })
        {
            Assert.Equal(pumpOn - DemandRig.Grid, rig.Comes(valve, SwitchState.On).First());
            Assert.Contains(pumpOff, rig.Comes(valve, SwitchState.Off));
        }
    }

    [Fact]
    public void AValveThatMayNotOpenHoldsThePumpForHalfAMinuteOnly()
    {
        // Ten seconds, and ten for each of two valves, from the scan on that sees the first open.
        var rig = new DemandRig(Sites.OneRack(), Morning) { Forbidden = "north/tier 2 valve" };
        rig.Run(Duration.FromHours(1));
        Assert.Equal(Seven + DemandRig.Grid + Duration.FromSeconds(30), rig.Comes("north/pump", SwitchState.On).Single());
    }

    [Theory]
    [InlineData(5, 24)]
    [InlineData(20, 50)]
    public void EachValveIsGivenWhatItIsApartFromTheNext(int restartSpacingS, int waitS)
    {
        // Two valves, whose currents show in 7 s each, and ten seconds.
        var site = Sites.OneRack().WithCircuitCurrent()
            .WithLimits(limits => limits with { RestartSpacing = Duration.FromSeconds(restartSpacingS) });
        var rig = new DemandRig(site, Morning) { Forbidden = "north/tier 2 valve" };
        rig.Run(Duration.FromHours(1));
        Assert.Equal(Seven + DemandRig.Grid + Duration.FromSeconds(waitS), rig.Comes("north/pump", SwitchState.On).Single());
    }

    [Fact]
    public void AFloodThatIsDueWhileACircuitComesBackWaitsForAllValves()
    {
        var rig = new Rig(
            WithPumpElsewhere(Sites.OneRack(tiers: 4)).WithLimits(limits => limits with { PumpRest = Duration.FromSeconds(30) }),
            Seven - Duration.FromMinutes(30));
        rig.LeapFor(Duration.FromMinutes(29.7));
        rig.Restart(Duration.FromSeconds(2));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        Assert.All(Enumerable.Range(1, 4), tier => Assert.True(rig.IsOn($"north/tier {tier} valve")));
    }

    [Fact]
    public void APumpNeverStartsWhileEveryValveIsClosed()
    {
        var rig = new DemandRig(Sites.OneRack(tiers: 1), Morning) { Forbidden = "north/tier 1 valve" };
        rig.Run(Duration.FromHours(1));
        Assert.Empty(rig.Comes("north/pump", SwitchState.On));
    }

    [Fact]
    public void AFloodIsCutShortWhenItsLastValveCloses()
    {
        var rig = new DemandRig(Sites.OneRack(tiers: 1), Morning);
        rig.RunUntil(Seven + Duration.FromMinutes(2));
        rig.Forbidden = "north/tier 1 valve";
        rig.Run(Duration.FromSeconds(1));

        Assert.Equal(SwitchState.Off, rig["north/pump"].State);
        Assert.Single(rig.When(FloodEvent.CutShort));
    }

    [Fact]
    public void WithoutACheckValveTheTraysDrainBackThroughOpenValves()
    {
        var site = Sites.OneRack().WithRack(rack => rack with { Supply = rack.Supply with { HasCheckValve = false } });
        var rig = new DemandRig(site, Morning);
        rig.RunUntil(Seven + Duration.FromMinutes(20));
        Assert.Equal(FloodPhase.Draining, rig.Demand.Phase);
        Assert.Equal(SwitchState.On, rig["north/tier 1 valve"].State);
        Assert.Equal(SwitchState.Off, rig["north/pump"].State);
        rig.Run(Duration.FromMinutes(20));
        Assert.Equal(SwitchState.Off, rig["north/tier 1 valve"].State);
    }

    [Fact]
    public void AFloodWhosePumpIsToldOffWhileSoakingDrainsAndIsOver()
    {
        var rig = CutAt(minutes: 7);
        rig.Run(Duration.FromHours(2));
        var cut = rig.Events.Single(each => each.What == FloodEvent.CutShort);
        Assert.Equal(Seven + Duration.FromMinutes(7) + DemandRig.Grid, cut.At.Wall);
        Assert.Equal("the pump was told off while soaking", cut.Because);
        Assert.Equal(cut.At.Wall, rig.When(FloodEvent.Draining).Single());
        Assert.Single(rig.When(FloodEvent.Filling));
    }

    [Fact]
    public void AFloodWhosePumpIsToldOffWhileFillingIsTriedOnceMoreAfterTheTraysHaveDrained()
    {
        var rig = CutAt(minutes: 2);
        rig.Run(Duration.FromHours(2));
        var cut = rig.Events.Single(each => each.What == FloodEvent.CutShort);
        Assert.Equal("the pump was told off while filling", cut.Because);
        Assert.True(rig.When(FloodEvent.Filling).Last() - rig.When(FloodEvent.Drained).First() < Duration.FromSeconds(1));
        Assert.Equal(2, rig.When(FloodEvent.Filling).Count());
        Assert.Equal(1, rig.Demand.FloodNumber);
    }

    [Fact]
    public void AFloodCutShortTwiceIsGivenUp()
    {
        var rig = new DemandRig(Sites.OneRack(), Morning);
        for (var minutes = 0; minutes < 300; minutes++)
        {
            rig.Run(Duration.FromMinutes(1));
            rig.PumpMayRun = _ => rig.Demand.Phase != FloodPhase.Filling;
        }

        Assert.Equal(2, rig.When(FloodEvent.CutShort).Count());
        Assert.Equal(FloodPhase.Idle, rig.Demand.Phase);
    }

    [Fact]
    public void AScheduleThatLetsMissedFloodsGoLetsThoseThatWereCutShortGoToo()
    {
        var site = Sites.OneRack().WithSchedule(s => s with { Floods = s.Floods with { Missed = MissedFloods.Skip } });
        var rig = CutAt(minutes: 2, site);
        rig.Run(Duration.FromHours(2));
        Assert.Single(rig.When(FloodEvent.Filling));
    }

    [Fact]
    public void AFloodWaitsForThePumpWithoutLimitAndMergesWithTheNext()
    {
        var rig = new DemandRig(Sites.OneRack(), Morning) { PumpMayRun = now => now.Wall >= Seven + Duration.FromHours(7) };
        rig.RunUntil(Seven + Duration.FromHours(7));
        Assert.Equal(["due", "merged"], rig.Events.Select(each => each.What));
        rig.Run(Duration.FromHours(4));
        Assert.Single(rig.When(FloodEvent.Filling));
    }

    [Fact]
    public void AFloodThatBeginsLaterThanHalfwayStandsForTheNext()
    {
        // Due at 07:00, begun at 10:05; the next would be due at 13:00, and 10:00 is halfway.
        var begins = Seven + Duration.FromMinutes(185);
        var rig = new DemandRig(Sites.OneRack(), Morning) { PumpMayRun = now => now.Wall >= begins };
        rig.RunUntil(begins);
        rig.Run(Duration.FromSeconds(1));
        Assert.Equal(Seven + Duration.FromHours(12), rig.NextFlood);
        rig.RunUntil(Seven + Duration.FromHours(13));
        Assert.Equal(
            [begins + DemandRig.Grid, Seven + Duration.FromHours(12) + DemandRig.Grid * 2], [.. rig.When(FloodEvent.Filling)]);
        Assert.Single(rig.When(FloodEvent.LeftOut), Seven + Duration.FromHours(6));
    }

    [Fact]
    public void AFloodThatBeginsEarlierThanHalfwayLeavesTheNextAlone()
    {
        var begins = Seven + Duration.FromMinutes(175);
        var rig = new DemandRig(Sites.OneRack(), Morning) { PumpMayRun = now => now.Wall >= begins };
        rig.RunUntil(begins);
        rig.RunUntil(Seven + Duration.FromHours(7));
        Assert.Equal(2, rig.When(FloodEvent.Filling).Count());
    }

    [Fact]
    public void AFloodThatComesDueWhileTheTraysDrainWaitsForThem()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(15));
        rig.Scan();
        Assert.True(rig.Demand.TryFloodNow(rig.Now, rig, out _));
        rig.Run(Duration.FromHours(2));
        Assert.Equal(2, rig.When(FloodEvent.Filling).Count());
        Assert.Equal(rig.When(FloodEvent.Drained).First() + DemandRig.Grid * 2, rig.When(FloodEvent.Filling).Last());
    }

    [Fact]
    public void AFloodWithoutSoakAndDrainStillStopsThePump()
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Soak = Duration.Zero, Drain = Duration.Zero },
        });
        var rig = new DemandRig(site, Morning);
        rig.Run(Duration.FromHours(1));
        Assert.Equal(["due", "filling", "soaking", "draining", "drained"], rig.Events.Select(each => each.What));
        Assert.Equal(SwitchState.Off, rig["north/pump"].State);
        Assert.Equal(rig.When(FloodEvent.Filling).Single() + Duration.FromMinutes(5), rig.Comes("north/pump", SwitchState.Off).Last());
    }

    [Fact]
    public void AFillWhoseLastTierIsTakenOutOfUseIsNotTriedAgain()
    {
        var rig = new DemandRig(Sites.OneRack(tiers: 1), Morning);
        rig.RunUntil(Seven + Duration.FromMinutes(2));
        rig.Demand.TrySetTierInUse(1, false, out _);
        rig.Run(Duration.FromHours(1));
        Assert.Equal(["due", "filling", "cut short", "draining", "drained"], rig.Events.Select(each => each.What));
    }

    /// <summary>A rack whose pump is told off for a minute, so long after the flood of seven became due.</summary>
    private static DemandRig CutAt(int minutes, Site? site = null)
    {
        var cut = Seven + Duration.FromMinutes(minutes);
        var rig = new DemandRig(site ?? Sites.OneRack(), Morning)
        {
            PumpMayRun = now => now.Wall < cut || now.Wall > cut + Duration.FromMinutes(1),
        };
        rig.RunUntil(cut);
        return rig;
    }

    private static Site WithPumpElsewhere(Site site) => site with
    {
        Circuits = site.Circuits.Add(site.Circuits[0] with { Id = new CircuitId(1), Name = "other sockets", SupplySense = null }),
        Loads = site.Loads.SetItem(0, site.Loads[0] with { Circuit = new CircuitId(1) }),
    };
}
