using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>A fan that draws as much as the pump, 45 W each, and an aerator of 5 W: what flows while everything is told off may be that of
/// either.</summary>
public class PumpOrAirTests
{
    private const string Pump = "north/pump";
    private const string Aerator = "north/aerator";
    private const string Fan = "north/fan";
    private const string FanWelded = "north/fan/relay-welded";

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AFanThatStaysOnThroughARestartIsNotTakenForThePump(bool hasWire)
    {
        var circuit = Quiet(site => hasWire ? site.WithPumpCurrent() : site);
        circuit.Weld(Fan);
        Restart(circuit);
        circuit.Rig.LeapFor(Duration.FromHours(30));
        Assert.DoesNotContain(circuit.Rig.Events, each => each is { Kind: EventKind.Load, What: "open" });
        Assert.Null(circuit.Rig.Alarm("north/pump/relay-welded"));
        Assert.True(circuit.Rig.IsOn(Aerator));
    }

    [Fact]
    public void ItIsToldOfAtTheNextMomentInWhichItIsToldOff()
    {
        var circuit = Quiet(site => site);
        circuit.Weld(Fan);
        Restart(circuit);
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        Assert.Null(circuit.Rig.Alarm(FanWelded));
        Restart(circuit);
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Fan));
        circuit.Rig.LeapFor(Duration.FromSeconds(5));
        Assert.Equal(AlarmPriority.Critical, circuit.Rig.Alarm(FanWelded)!.Priority);
        Assert.False(circuit.Rig.IsCut);
    }

    /// <summary>Quiet for a minute, then the aerator, then the fan, ten seconds apart.</summary>
    [Fact]
    public void APumpThatRunsOnThroughARestartIsCutAsSoonAsTheFanIsSeenToComeOn()
    {
        var circuit = Quiet(site => site);
        circuit.Weld(Pump);
        Restart(circuit);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsCut);
        Assert.InRange((circuit.Rig.Now.Monotonic - MonotonicTime.FromMilliseconds(5_000)).TotalSeconds, 72, 76);
    }

    [Fact]
    public void AirThatIsWiredToBeOnAndDrawsAsMuchAsThePumpTogetherIsNotTakenForIt()
    {
        var circuit = new LiveCircuit(site => Drawing(site, aeratorW: 22, fanW: 22).WithContactor());
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        circuit.Weld(Fan);
        circuit.Weld(Aerator);
        Restart(circuit);
        circuit.Rig.LeapFor(Duration.FromHours(2));
        Assert.False(circuit.Rig.IsCut);
        Assert.True(circuit.Rig.IsOn(Aerator));
    }

    [Fact]
    public void APumpThatWeldsBesideAFanThatIsKnownToStayOnIsCut()
    {
        var circuit = Quiet(site => site);
        circuit.Weld(Fan);
        Restart(circuit);
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        circuit.Weld(Pump);
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void OfAFanThatNobodyWantsTheLikelierIsTaken()
    {
        foreach (var (welded, isCut) in new[] { (Pump, true), (Fan, false) })
        {
            var circuit = Quiet(site => WantedNever(Drawing(site, aeratorW: 5, fanW: 36)));
            circuit.Weld(welded);
            Restart(circuit);
            circuit.Rig.LeapFor(Duration.FromMinutes(10));
            Assert.Equal(isCut, circuit.Rig.IsCut);
        }
    }

    [Fact]
    public void AFanThatIsKnownToBeDeadIsNotAsked()
    {
        var circuit = Quiet(site => site);
        circuit.Draws(Fan, 0);
        circuit.Rig.LeapUntil(() => circuit.Rig.Alarm("north/fan/dead-air") is not null);
        circuit.Weld(Pump);
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void AFanWhoseRelayWasChangedIsForgotten()
    {
        var circuit = Quiet(site => site);
        circuit.Weld(Fan);
        Restart(circuit);
        circuit.Rig.LeapFor(Duration.FromHours(13));
        Assert.NotNull(circuit.Rig.Alarm(FanWelded));
        circuit.Mend(Fan);
        circuit.Rig.LeapFor(Duration.FromHours(13));
        circuit.Rig.Ask(new ResetLatch("Ada", FanWelded));
        circuit.Rig.Ask(new ConfirmReset("Ada", FanWelded));
        circuit.Rig.LeapFor(Duration.FromHours(26));
        Assert.DoesNotContain(
            circuit.Rig.Control.Alarms(), alarm => alarm.Key == FanWelded && alarm.State != AlarmState.ReturnedUnacknowledged);
    }

    private static void Restart(LiveCircuit circuit)
    {
        circuit.Rig.Restart(Duration.FromSeconds(5));
        circuit.Now(() => { });
    }

    private static LiveCircuit Quiet(Func<Site, Site> change)
    {
        var circuit = new LiveCircuit(site => change(Drawing(site, aeratorW: 5, fanW: 45).WithContactor()));
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        return circuit;
    }

    private static Site Drawing(Site site, double aeratorW, double fanW) => site with
    {
        Loads =
        [
            .. site.Loads.Select(load => load.Name == Fan ? load with { PowerW = fanW }
                : load.Name == Aerator ? load with { PowerW = aeratorW } : load),
        ],
    };

    private static Site WantedNever(Site site) => site.WithSchedule(plan => plan with
    {
        Runs =
        [
            .. plan.Runs.Where(run => run.Load != site.LoadNamed(Fan)),
            new RunInCycles(site.LoadNamed(Fan), Duration.FromMinutes(1), Duration.FromHours(40)),
        ],
    });
}
