using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;
using RackController.Testing;
using static RackController.Control.Tests.Interlocks.DarkMoments;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row weld-check: what it finds is told by relay-welded.</summary>
public sealed class WeldCheckTests
{
    private const string Pump = "north/pump";
    private const string Wire = "north/pump current";
    private const string Aerator = "north/aerator";
    private const string Light = "north/tier 1 light";
    private const string LightWelded = "north/tier 1 light/relay-welded";

    [Fact]
    public void AnIdlePumpWhoseRelayWeldsIsCutWithinMinutes()
    {
        var circuit = Quiet(site => site.WithContactor());
        circuit.Weld(Pump);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Aerator));
        Assert.Contains(
            "weld-check: everything on its circuit is off for a moment, to see whether north/pump draws current though it is told off",
            circuit.Rig.Why(Aerator).Interlocks);
        circuit.Rig.LeapFor(Duration.FromSeconds(8));
        Assert.True(circuit.Rig.IsCut);
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm("north/pump/relay-welded")!.State);
    }

    [Fact]
    public void ItComesWithinSixMinutesAndIsNoAlarm()
    {
        var circuit = Quiet(site => site.WithContactor());
        circuit.Weld(Pump);
        circuit.Rig.LeapFor(Duration.FromMinutes(6));
        Assert.True(circuit.Rig.IsCut);
        Assert.DoesNotContain(circuit.Rig.Control.Alarms(), alarm => alarm.Key.EndsWith("/weld-check", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatWasPluggedInForAMomentIsNoPumpAndAllComesBackOneByOne()
    {
        var circuit = Quiet(site => site.WithContactor());
        circuit.Now(() => circuit.OtherA = 0.375);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Aerator));
        circuit.Now(() => circuit.OtherA = 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.False(circuit.Rig.IsCut);
        var back = circuit.Rig.Events.Where(e => e is { Kind: EventKind.Load, What: "on" }).TakeLast(2).ToList();
        Assert.Equal([Aerator, "north/fan"], back.Select(e => e.Subject));
        Assert.InRange((back[1].At.Monotonic - back[0].At.Monotonic).TotalSeconds, 10, 11);
    }

    [Fact]
    public void ALightThatDiesAsThePumpIsSwitchedOffDoesNotHideThePumpsWeldedRelay()
    {
        var circuit = Quiet(site => site.WithContactor().WithPumpCurrent());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        EndFlood(circuit);
        circuit.Draws(Light, 0);
        circuit.Weld(Pump);
        circuit.Rig.LeapFor(Duration.FromSeconds(60));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void AWireSensorThatSaysNothingFlowsIsOverruledByWhatFlowsWhileAllIsOff()
    {
        var circuit = Quiet(site => site.WithContactor().WithPumpCurrent());
        circuit.Weld(Pump);
        circuit.Rig.LeapFor(Duration.FromMinutes(6));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void AWireSensorStuckWhereThePumpRanCutsNothingAndIsCheckedOnce()
    {
        var circuit = Quiet(site => site.WithContactor().WithPumpCurrent());
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        circuit.Rig.Set(Wire, 0.375);
        circuit.Rig.LeapFor(Duration.FromHours(2));
        Assert.False(circuit.Rig.IsCut);
        Assert.Null(circuit.Rig.Alarm("north/pump/relay-welded"));
        Assert.Single(circuit.Rig.Events, e =>
            e is { Subject: Aerator, What: "off" } && e.Because.Contains(Pump, StringComparison.Ordinal));
    }

    [Fact]
    public void ACircuitSensorThatDoesNotFollowIsNotBelievedAgainstTheWire()
    {
        var circuit = Quiet(site => site.WithContactor().WithPumpCurrent());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        EndFlood(circuit);
        circuit.Rig.Rack = null;
        circuit.Rig.Set("sockets/current", circuit.CurrentA);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void ACircuitSensorThatDoesNotFollowBlamesNobody()
    {
        var circuit = Quiet(site => site.WithContactor().WithPumpCurrent());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Pump));
        circuit.Rig.Set(Wire, 0.375);
        circuit.Rig.LeapFor(Duration.FromSeconds(30));
        circuit.Rig.Rack = null;
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Pump));
        circuit.Rig.Set(Wire, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.False(circuit.Rig.IsCut);
        Assert.DoesNotContain(circuit.Rig.Control.Alarms(), alarm => alarm.Key.Contains("/dead-", StringComparison.Ordinal)
            || alarm.Key.EndsWith("/relay-welded", StringComparison.Ordinal));
    }

    [Fact]
    public void ItWaitsForTheFloodUnderWay()
    {
        var circuit = Quiet(site => site.WithLimits(limits => limits with { RelayRest = Duration.Zero }));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Pump));
        circuit.Weld("north/tier 2 light");
        circuit.Rig.Ask(new SetTierInUse("Ada", new RackId(0), 2, InUse: false));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/tier 2 light"));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Aerator) || !circuit.Rig.IsOn(Pump));
        Assert.True(circuit.Rig.IsOn(Aerator));
    }

    [Fact]
    public void AWeldedLightThatWasMendedIsSeenToBeOffWithinTwoHoursAndCanBeReset()
    {
        var circuit = Quiet(site => site.WithSchedule(plan => plan with { LightStagger = Duration.FromMinutes(1) }));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Weld(Light);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        Assert.NotNull(circuit.Rig.Alarm(LightWelded));
        circuit.Mend(Light);
        circuit.Rig.LeapFor(Duration.FromHours(2));
        circuit.Rig.Ask(new ResetLatch("Ada", LightWelded));
        circuit.Rig.Ask(new ConfirmReset("Ada", LightWelded));
        circuit.Rig.LeapFor(Duration.FromSeconds(1));
        Assert.NotEqual(AlarmState.Latched, circuit.Rig.Alarm(LightWelded)?.State);
    }

    [Fact]
    public void AStartOfTheLightsThatShowsForAMomentHidesNoPumpThatWeldsThen()
    {
        var circuit = Quiet(site => site.WithContactor());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Weld(Pump);
        circuit.Rig.LeapFor(Duration.FromSeconds(40));
        Assert.True(circuit.Rig.IsCut);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void APumpWhoseRelayWeldedBeforeARestartIsCutAlsoWhereTheAirIsLeftOn(bool wasLate)
    {
        var circuit = Quiet(site => site.WithContactor());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Pump));
        circuit.Rig.LeapFor(Duration.FromSeconds(30));
        circuit.Weld(Pump);
        if (wasLate)
        {
            circuit.Rig.Conditions = ScanConditions.Good with { LateBy = Duration.FromSeconds(2) };
            circuit.Rig.Scan();
            circuit.Rig.Conditions = ScanConditions.Good;
        }

        circuit.Rig.Restart(Duration.FromSeconds(2));
        circuit.Now(() => { });
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void WhereTheSupplyWandersItComesAtMostOnceAfterAFlood()
    {
        var circuit = Quiet(Bright);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        for (var minute = 0; minute < 14 * 60; minute++)
        {
            circuit.Now(() => circuit.Supply = 1 + 0.02 * Math.Sin(minute * minute));
            circuit.Rig.LeapFor(Duration.FromMinutes(1));
        }

        Assert.InRange(circuit.Rig.Events.Count(e => e is { Kind: EventKind.Load, Subject: Light, What: "off" }), 0, 4);
    }

    [Fact]
    public void ItLastsEightSeconds()
    {
        var circuit = Quiet(site => site);
        circuit.Now(() => circuit.OtherA = 0.375);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Aerator));
        var off = circuit.Rig.Now.Monotonic;
        circuit.Now(() => circuit.OtherA = 0);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Aerator));
        Assert.Equal(Duration.FromSeconds(8), circuit.Rig.Now.Monotonic - off);
    }

    [Fact]
    public void ANewDoubtIsCheckedTenMinutesAfterTheLastCheckAtTheEarliest()
    {
        var circuit = Quiet(WithoutFloods);
        for (var time = 1; time <= 2; time++)
        {
            circuit.Now(() => circuit.OtherA = 0.375);
            circuit.Rig.LeapUntil(() => ChecksOf(circuit, Pump).Count == time);
            circuit.Now(() => circuit.OtherA = 0);
            circuit.Rig.LeapFor(Duration.FromSeconds(45));
        }

        var checks = ChecksOf(circuit, Pump);
        Assert.Equal(Duration.FromMinutes(10), checks[1] - checks[0]);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void APumpOfWhichNobodySawWhetherItStoppedIsCheckedOnceTheSensorSpeaksAgain(bool isWelded)
    {
        const string sensor = "sockets/current";
        var circuit = Quiet(site => site.WithContactor());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Pump));
        circuit.Rig.Silence(sensor);
        if (isWelded)
        {
            circuit.Weld(Pump);
        }

        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Pump));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.Empty(ChecksOf(circuit, Pump));
        circuit.Rig.Speak(sensor);
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        Assert.NotEmpty(ChecksOf(circuit, Pump));
        Assert.Equal(isWelded, circuit.Rig.IsCut);
    }

    // To the moment in which the pump is told off, its wire still as it was.
    private static void EndFlood(LiveCircuit circuit)
    {
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Pump));
        circuit.Rig.Set(Wire, 0.375);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Pump));
    }
}
