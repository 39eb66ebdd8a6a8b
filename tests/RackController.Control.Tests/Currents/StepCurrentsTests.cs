using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>What the sensor of a circuit tells of its loads. On the circuit of 120 V and 15 A the aerator draws 0.04 A, the fan 0.10 A, the
/// pump 0.38 A and each of two lights 0.67 A by their nameplates.</summary>
public class StepCurrentsTests
{
    private const string Aerator = "north/aerator";
    private const string Light = "north/tier 1 light";

    [Fact]
    public void ADeadAeratorIsToldOfWithinMinutesThoughTheLightsDrawThirtyTimesAsMuch()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromHours(2));
        Assert.Null(circuit.Rig.Alarm("north/aerator/dead-air"));

        circuit.Draws(Aerator, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(6));
        var alarm = circuit.Rig.Alarm("north/aerator/dead-air")!;
        Assert.Equal(AlarmPriority.High, alarm.Priority);
        Assert.Equal(AlarmState.Unacknowledged, alarm.State);
    }

    [Fact]
    public void WhatFlowsWhileEverythingIsToldOffMayBeAnyOfTheLightsThatDrawAsMuch()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        circuit.Rig.Set("sockets/supply sense", 0);
        circuit.Rig.ScanFor(Duration.FromSeconds(2));
        circuit.Weld("north/tier 2 light");
        circuit.Rig.Set("sockets/supply sense", 1);
        circuit.Rig.LeapFor(Duration.FromSeconds(40));
        Assert.NotNull(circuit.Rig.Alarm($"{Light}/relay-welded"));
        Assert.Null(circuit.Rig.Alarm("north/tier 2 light/relay-welded"));

        // The other, for which it may be taken as well, draws current when it is told on, which is no news.
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/tier 2 light"));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.Null(circuit.Rig.Alarm("north/tier 2 light/dead-load"));
    }

    [Fact]
    public void ADeadValveIsToldOfAsSoonAsItShouldOpen()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Rig.LeapFor(Duration.FromHours(1));
        circuit.Draws("north/tier 2 valve", 0);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        Assert.NotNull(circuit.Rig.Alarm("north/tier 2 valve/dead-load"));
        Assert.Null(circuit.Rig.Alarm("north/tier 1 valve/dead-load"));

        circuit.Draws("north/tier 2 valve", 1);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, circuit.Rig.Alarm("north/tier 2 valve/dead-load")!.State);
    }

    [Fact]
    public void AnAeratorThatWasDeadFromTheStartIsToldOfByItsFirstCheck()
    {
        var circuit = new LiveCircuit();
        circuit.Draws(Aerator, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(12));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm("north/aerator/dead-air")!.State);
    }

    [Fact]
    public void AMendedAeratorIsSeenToRunAgain()
    {
        var circuit = new LiveCircuit();
        circuit.Draws(Aerator, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(12));
        circuit.Draws(Aerator, 1);
        circuit.Rig.LeapFor(Duration.FromMinutes(20));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, circuit.Rig.Alarm("north/aerator/dead-air")!.State);
    }

    [Fact]
    public void AnAliveAeratorIsOffForSecondsTwiceADay()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        circuit.Rig.LeapFor(Duration.FromHours(47));
        var switched = circuit.Rig.Events.Where(e => e is { Kind: EventKind.Load, Subject: Aerator }).ToList();
        Assert.Equal(8, switched.Count);
        foreach (var pair in switched.Chunk(2))
        {
            Assert.Equal(("off", "on"), (pair[0].What, pair[1].What));
            Assert.InRange((pair[1].At.Monotonic - pair[0].At.Monotonic).TotalSeconds, 7, 10);
            Assert.Equal("it is off for a moment, to see by the current whether it is alive", pair[0].Because);
        }

        Assert.DoesNotContain(circuit.Rig.Control.Alarms(), alarm => alarm.Key.Contains("dead", StringComparison.Ordinal));
    }

    [Fact]
    public void ALightThatDrawsHalfOfItsNameplateIsAlive()
    {
        var circuit = new LiveCircuit();
        circuit.Draws(Light, 0.5);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.Null(circuit.Rig.Alarm("north/tier 1 light/dead-load"));
    }

    [Fact]
    public void ADeadLightIsToldOfWhenItIsSwitchedOn()
    {
        var circuit = new LiveCircuit();
        circuit.Draws(Light, 0);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.Equal(AlarmPriority.Medium, circuit.Rig.Alarm("north/tier 1 light/dead-load")!.Priority);
    }

    [Fact]
    public void ARelayThatWeldsJustBeforeThePumpIsDueIsNotTalkedAwayByTheCircuit()
    {
        static LiveCircuit Make() => new(site => site.WithContactor().WithPumpCurrent());
        var sound = Make();
        sound.Rig.LeapUntil(() => sound.Rig.IsOn("north/pump"));
        var circuit = Make();
        circuit.Rig.LeapFor(sound.Rig.Now.Monotonic - circuit.Rig.Now.Monotonic - Duration.FromSeconds(1));
        circuit.Weld("north/pump");
        circuit.Rig.Set("north/pump current", 0.375);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/pump"));
        circuit.Rig.LeapFor(Duration.FromSeconds(10));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void NothingIsTakenForDeadBecauseOutputsFailed()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromHours(1));
        circuit.Rig.Conditions = ScanConditions.Good with { Io = new IoOutcome("the board is gone") };
        circuit.Draws(Aerator, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Draws(Aerator, 1);
        circuit.Rig.Conditions = ScanConditions.Good;
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        Assert.DoesNotContain(circuit.Rig.Control.Alarms(), alarm => alarm.Key.Contains("/dead-", StringComparison.Ordinal));
    }

    [Fact]
    public void ALightThatDiedWhileItWasOnIsNotTakenForAWeldedRelay()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromHours(1));
        circuit.Draws(Light, 0);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromMinutes(10));
        Assert.Null(circuit.Rig.Alarm("north/tier 1 light/relay-welded"));
    }

    [Fact]
    public void APumpWithoutASensorInItsWireIsCutWhenTheCircuitDoesNotFallAtItsEnd()
    {
        var circuit = new LiveCircuit(site => site.WithContactor());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Weld("north/pump");
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/pump"));
        circuit.Rig.LeapFor(Duration.FromSeconds(10));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void APumpThatIsStillWeldedWhenItsLatchIsResetIsFoundBeforeAnythingElseIsOn()
    {
        var circuit = new LiveCircuit(site => site.WithContactor());
        WeldAndReset(circuit, mends: false);
        circuit.Rig.LeapFor(Duration.FromSeconds(5));
        Assert.True(circuit.Rig.IsCut);
        Assert.All(circuit.Rig.Site.Loads, load => Assert.False(circuit.Rig.IsOn(load.Name)));
        circuit.Rig.LeapFor(Duration.FromHours(24));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void APumpWhoseRelayWasChangedRunsAgainAfterTheReset()
    {
        var circuit = new LiveCircuit(site => site.WithContactor());
        WeldAndReset(circuit, mends: true);
        circuit.Rig.LeapFor(Duration.FromHours(48));
        Assert.False(circuit.Rig.IsCut);
        Assert.DoesNotContain(circuit.Rig.Control.Alarms(), alarm => alarm.State is AlarmState.Unacknowledged or AlarmState.Latched);
    }

    [Fact]
    public void AWeldedLightIsToldOfAndTakesNoAirAway()
    {
        var circuit = new LiveCircuit(
            site => site.WithContactor().WithSchedule(plan => plan with { LightStagger = Duration.FromMinutes(1) }));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Weld(Light);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromSeconds(10));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm("north/tier 1 light/relay-welded")!.State);
        Assert.False(circuit.Rig.IsCut);
        Assert.True(circuit.Rig.IsOn(Aerator));
    }

    [Fact]
    public void CurrentWhileEverythingIsToldOffIsThatOfAWeldedRelay()
    {
        var circuit = new LiveCircuit(site => site.WithContactor());
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        circuit.Weld("north/pump");
        circuit.Rig.Restart(Duration.FromSeconds(20));
        circuit.Rig.LeapFor(Duration.FromSeconds(20));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void ARelayThatWeldedWhileTheSupplyWasAwayIsFoundWhileTheCircuitIsStillQuiet()
    {
        var circuit = new LiveCircuit(site => site.WithContactor());
        const string sense = "sockets/supply sense";
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        circuit.Now(() => circuit.Supply = 0);
        circuit.Rig.Set(sense, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        circuit.Weld("north/pump");
        circuit.Rig.Set(sense, 1);
        circuit.Now(() => circuit.Supply = 1);
        circuit.Rig.LeapFor(circuit.Rig.Site.Racks[0].Limits.SupplyQuietPeriod + -Duration.FromSeconds(30));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void ASupplyThatWandersByATenthRaisesNoAlarm()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        for (var hour = 0; hour < 72; hour++)
        {
            circuit.Now(() => circuit.Supply = 1 + 0.1 * Math.Sin(hour));
            circuit.Rig.LeapFor(Duration.FromHours(1));
        }

        Assert.Empty(circuit.Rig.Control.Alarms());
    }

    [Fact]
    public void WhatASensorSaidBeforeItFellSilentIsNoProof()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.Silence("sockets/current");
        circuit.Draws(Light, 0);
        circuit.Rig.LeapFor(Duration.FromHours(20));
        Assert.DoesNotContain(circuit.Rig.Control.Alarms(), alarm => alarm.Key.Contains("dead", StringComparison.Ordinal));
    }

    // Until the contactor has just closed again.
    private static void WeldAndReset(LiveCircuit circuit, bool mends)
    {
        const string key = "north/pump/relay-welded";
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Weld("north/pump");
        circuit.Rig.LeapUntil(() => circuit.Rig.IsCut);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        if (mends)
        {
            circuit.Mend("north/pump");
        }

        circuit.Rig.Scan(new ResetLatch("Ada", key));
        circuit.Rig.Scan(new ConfirmReset("Ben", key));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsCut);
    }
}
