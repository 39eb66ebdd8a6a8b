using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Admission;

public class AdmissionTests
{
    [Fact]
    public void LoadsComeOnOneAtATimeByPriority()
    {
        var rig = new Rig(Quiet(Sites.OneRack()));
        rig.ScanFor(Duration.FromSeconds(10));

        var on = rig.Events.Where(e => e.Kind == EventKind.Load).ToList();
        Assert.Equal(["north/tier 1 light", "north/tier 2 light"], on.Select(e => e.Subject));
        Assert.Equal(Duration.FromSeconds(1), on[1].At.Monotonic - on[0].At.Monotonic);
    }

    [Fact]
    public void ALightThatNeverFindsRoomIsToldAtOnceAlsoWhenLeaping()
    {
        var dark = Instant.FromUtc(2026, 6, 1, 9, 0);
        var rig = new Rig(WithLimit(Quiet(Sites.OneRack()), 0.5), dark);
        rig.LeapUntil(() => rig.Alarm("sockets/circuit-shed") is not null);

        // 06:00 in New York.
        Assert.True(rig.Now.Wall - Instant.FromUtc(2026, 6, 1, 10, 0) <= Duration.FromSeconds(1));
    }

    [Fact]
    public void WhatDoesNotFitTheCircuitIsShedFromTheTop()
    {
        // 5 + 12 + 2 x 80 W at 120 V is 1.475 A: with 1.2 A the upper light has no room.
        var rig = new Rig(WithLimit(Quiet(Sites.OneRack()), 1.2));
        rig.ScanFor(Duration.FromSeconds(10));

        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.False(rig.IsOn("north/tier 2 light"));
        Assert.Equal("sockets would carry 1.5 A with it and may carry 1.2 A", rig.Why("north/tier 2 light").Summary);
        Assert.Equal(AlarmPriority.Low, rig.Alarm("sockets/circuit-shed")!.Priority);
    }

    [Fact]
    public void APumpThatNeedsTheRoomShedsALightBeforeItStarts()
    {
        // Everything is 1.95 A with the pump and both valves; 1.6 A carries both lights only while the pump is off.
        var rig = new Rig(WithLimit(Sites.OneRack(), 1.6));
        rig.LeapUntil(() => rig.IsOn("north/tier 2 light"));
        rig.LeapUntil(() => rig.IsOn("north/pump"));

        Assert.False(rig.IsOn("north/tier 2 light"));
        var lightOff = rig.Events.Last(e => e.Subject == "north/tier 2 light");
        var pumpOn = rig.Events.Last(e => e.Subject == "north/pump");
        Assert.True(lightOff.At.Monotonic <= pumpOn.At.Monotonic);

        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromSeconds(10));
        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void ACircuitMayCarryExactlyItsLimit()
    {
        var exactly = (5 + 12 + 80 + 80) / 120.0;
        var rig = new Rig(WithLimit(Quiet(Sites.OneRack()), exactly));
        rig.ScanFor(Duration.FromSeconds(10));

        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void ARelayRestsBetweenOffAndOn()
    {
        var rig = new Rig(Quiet(Sites.OneRack()));
        rig.ScanFor(Duration.FromSeconds(10));
        rig.Scan(new Stop("Ada", null));
        var off = rig.Now.Monotonic;
        rig.Scan(new Resume("Ada", null));
        Assert.Contains("its relay rests until", rig.Why("north/tier 1 light").Summary);

        rig.LeapUntil(() => rig.IsOn("north/tier 1 light"));

        Assert.Equal(Duration.FromSeconds(5), rig.Now.Monotonic - off);
    }

    private static Site Quiet(Site site) =>
        site.WithSchedule(schedule => schedule with { Floods = schedule.Floods with { Times = new NoFloods() } });

    private static Site WithLimit(Site site, double limitA) =>
        site with { Circuits = [site.Circuits[0] with { ContinuousLimitA = limitA }] };
}
