using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Admission;

/// <summary>In which order and how soon the loads of a circuit come on.</summary>
public class CircuitAdmissionTests
{
    [Fact]
    public void WhatHasNeverBeenSwitchedNeedNotWait()
    {
        var rig = new Rig(Dry(Sites.OneRack().WithLimits(limits => limits with { RelayRest = Duration.FromMinutes(5) })));
        rig.Scan();
        Assert.True(rig.IsOn("north/tier 1 light"));
    }

    [Fact]
    public void ARestThatEndsBetweenTwoScansIsOverAtTheNext()
    {
        var rig = new Rig(Dry(Sites.OneRack().WithLimits(limits => limits with { RelayRest = Duration.FromSeconds(5.05) })));
        rig.ScanFor(Duration.FromSeconds(10));
        rig.Scan(new Stop("Ada", null));
        var off = rig.Now.Monotonic;
        rig.Scan(new Resume("Ada", null));
        rig.LeapUntil(() => rig.IsOn("north/tier 1 light"));
        Assert.Equal(Duration.FromSeconds(5.1), rig.Now.Monotonic - off);
    }

    [Fact]
    public void WhereThereIsNoRoomForBothTheValvesOpenAndThePumpStands()
    {
        // Aerator, fan, both valves and the pump are (5 + 12 + 6 + 6 + 45) W / 120 V = 0.62 A.
        var rig = new Rig(Sites.OneRack() with { Circuits = [Sites.OneRack().Circuits[0] with { ContinuousLimitA = 0.58 }] });
        rig.LeapUntil(() => rig.IsOn("north/tier 2 valve"));
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(rig.IsOn("north/tier 1 valve"));
        Assert.True(rig.IsOn("north/tier 2 valve"));
        Assert.False(rig.IsOn("north/pump"));
    }

    [Fact]
    public void AContactorThatOpensOrClosesIsToldOnceAndWhy()
    {
        const string key = "north/pump/relay-welded";
        var rig = new Rig(Dry(Sites.OneRack().WithPumpCurrent().WithContactor()));
        rig.ScanFor(Duration.FromSeconds(10));
        rig.Set("north/pump current", 0.6);
        rig.LeapUntil(() => rig.IsCut);
        Assert.All(rig.Site.Loads, load => Assert.False(rig.IsOn(load.Name)));
        rig.Set("north/pump current", 0);
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Scan(new ResetLatch("Ada", key), new ConfirmReset("Ben", key));
        rig.LeapFor(Duration.FromMinutes(1));
        var told = rig.Events.Where(each => each.Subject == "sockets/contactor").ToList();
        Assert.Equal(["open", "closed"], told.Select(each => each.What));
        Assert.StartsWith("north/pump draws current though its relay is told off", told[0].Because, StringComparison.Ordinal);
        Assert.Equal("nothing asks for it to be open", told[1].Because);
    }

    [Fact]
    public void ValvesOpenBeforeTheirPumpStarts()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        Assert.Equal(
            ["north/tier 1 valve", "north/tier 2 valve", "north/pump"],
            rig.Events.Where(each => each.Kind == EventKind.Load).TakeLast(3).Select(each => each.Subject));
    }

    [Fact]
    public void AValveWhoseCurrentIsSeenStandsAloneForAMomentBeforeWhateverComesNext()
    {
        // It is judged 3 s after, and 3 s later where the reading was too old.
        var rig = new Rig(Sites.OneRack().WithCircuitCurrent());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        var on = rig.Events.Where(each => each.Kind == EventKind.Load).TakeLast(3).ToList();
        Assert.Equal(["north/tier 1 valve", "north/tier 2 valve", "north/pump"], on.Select(each => each.Subject));
        Assert.Equal([7, 7], on.Zip(on.Skip(1)).Select(pair => (pair.Second.At.Monotonic - pair.First.At.Monotonic).TotalSeconds));
    }

    [Fact]
    public void AValveThatDrawsTooLittleToBeSeenKeepsNobodyWaiting()
    {
        var site = Sites.OneRack().WithCircuitCurrent();
        var loads = site.Loads.Select(load => load.Kind == LoadKind.Valve ? load with { PowerW = 3 } : load);
        var rig = new Rig(site with { Loads = [.. loads] });
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        var on = rig.Events.Where(each => each.Kind == EventKind.Load).TakeLast(3).ToList();
        Assert.Equal([1, 1], on.Zip(on.Skip(1)).Select(pair => (pair.Second.At.Monotonic - pair.First.At.Monotonic).TotalSeconds));
    }

    [Fact]
    public void WhatFindsNoRoomLeavesItToWhatIsSmallerAndAsksAgainOnceThereIsRoom()
    {
        // Fan, aerator and one light are (5 + 12 + 80) W / 120 V = 0.81 A.
        var rig = new Rig(Dry(Sites.OneRack()) with { Circuits = [Sites.OneRack().Circuits[0] with { ContinuousLimitA = 0.85 }] });
        rig.ScanFor(Duration.FromSeconds(10));
        Assert.True(rig.IsOn("north/aerator"));
        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.False(rig.IsOn("north/tier 2 light"));
        Assert.True(rig.Control.NextChange > rig.Now.Monotonic);

        rig.Scan(new SetTierInUse("Ada", new RackId(0), 1, InUse: false));
        rig.LeapFor(Duration.FromSeconds(5));
        Assert.False(rig.IsOn("north/tier 1 light"));
        Assert.True(rig.IsOn("north/tier 2 light"));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm("sockets/circuit-shed")!.State);
    }

    [Fact]
    public void AfterTheContactorEachLoadWaitsForTheOneBeforeAndThenTheUsualStaggerIsBack()
    {
        const string key = "north/pump/relay-welded";
        var site = Dry(Sites.OneRack().WithPumpCurrent().WithContactor());
        var rig = new Rig(site);
        rig.ScanFor(Duration.FromSeconds(10));
        rig.Set("north/pump current", 0.6);
        rig.ScanFor(Duration.FromSeconds(4));
        Assert.True(rig.IsCut);
        rig.Set("north/pump current", 0);
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.Equal("the contactor of sockets is open", rig.Why("north/tier 1 light").Summary);
        rig.Scan(new ResetLatch("Ada", key));
        rig.Scan(new ConfirmReset("Ben", key));
        var closed = rig.Now.Monotonic;
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.Equal(Spaced(site.Racks[0].Limits.RestartSpacing), Gaps(rig, closed));

        rig.Scan(new Stop("Ada", null));
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Scan(new Resume("Ada", null));
        var resumed = rig.Now.Monotonic;
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.Equal([site.Racks[0].Limits.SwitchingStagger], Gaps(rig, resumed));
    }

    private static Duration[] Spaced(Duration by) => [by, by, by];

    private static IEnumerable<Duration> Gaps(Rig rig, MonotonicTime from)
    {
        var on = rig.Events.Where(each => each.Kind == EventKind.Load && each.What == "on" && each.At.Monotonic >= from).ToList();
        return on.Zip(on.Skip(1), (one, next) => next.At.Monotonic - one.At.Monotonic);
    }

    private static Site Dry(Site site) =>
        site.WithSchedule(schedule => schedule with { Floods = schedule.Floods with { Times = new NoFloods() } });
}
