using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>When the sensor of a circuit is looked at, and what is made of it when it was silent or the contactor closes again.</summary>
public class CircuitLooksTests
{
    private const string Aerator = "north/aerator";
    private const string Light = "north/tier 1 light";
    private const string Pump = "north/pump";
    private const string Sensor = "sockets/current";

    /// <summary>It is looked every 10 s for the first 30 looks, then every 5 minutes. What rises is checked 10 s after it was seen.
    /// </summary>
    [Theory]
    [InlineData(4, true)]
    [InlineData(7, false)]
    public void AtFirstItIsLookedEveryTenSecondsAndLaterEveryFiveMinutes(int minutes, bool isSeenSoon)
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/fan"));
        circuit.Rig.LeapFor(Duration.FromMinutes(minutes));
        var before = circuit.Rig.Events.Count;
        circuit.Now(() => circuit.OtherA = 0.375);
        circuit.Rig.LeapFor(Duration.FromSeconds(45));
        Assert.Equal(isSeenSoon, circuit.Rig.Events.Skip(before).Any(each => each is { Subject: Aerator, What: "off" }));
    }

    [Fact]
    public void WhatIsGoneAgainBeforeTheNextLookIsNotSeen()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromHours(1));
        var before = circuit.Rig.Events.Count;
        circuit.Now(() => circuit.OtherA = 0.375);
        circuit.Rig.ScanFor(Duration.FromSeconds(15));
        circuit.Now(() => circuit.OtherA = 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(20));
        Assert.DoesNotContain(circuit.Rig.Events.Skip(before), each => each is { Subject: Aerator, What: "off" });
    }

    [Fact]
    public void ALightThatDiesJustBeforeThePumpIsSwitchedIsFoundByACheck()
    {
        var sound = new LiveCircuit();
        UntilTheNextFlood(sound);
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(sound.Rig.Now.Monotonic - circuit.Rig.Now.Monotonic - Duration.FromSeconds(1));
        Assert.False(circuit.Rig.IsOn(Pump));
        circuit.Draws(Light, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        Assert.NotNull(circuit.Rig.Alarm("north/tier 1 light/dead-load"));
    }

    [Fact]
    public void WhatASilentSensorSaidLastIsNotSaidOn()
    {
        var circuit = new LiveCircuit(site => site.WithSchedule(plan => plan with { LightStagger = Duration.FromMinutes(1) }));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Weld(Light);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromSeconds(10));
        Assert.StartsWith($"{Light} draws current", circuit.Rig.Alarm("north/tier 1 light/relay-welded")!.Cause, StringComparison.Ordinal);
        circuit.Rig.Silence(Sensor);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.StartsWith($"{Light} drew current", circuit.Rig.Alarm("north/tier 1 light/relay-welded")!.Cause, StringComparison.Ordinal);
    }

    [Fact]
    public void ALightThatCameOnWhileTheSensorWasSilentIsNotBlamedWhenThePumpIsSwitchedNext()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        circuit.Rig.Silence(Sensor);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Rig.Speak(Sensor);
        UntilTheNextFlood(circuit);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.Null(circuit.Rig.Alarm("north/tier 1 light/dead-load"));
    }

    /// <summary>Not by one of the looks that come every 10 s anyway, wherever they fall.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(8)]
    public void WhatTheContactorLetsFlowAgainIsSeenWithinSeconds(int seconds)
    {
        const string key = "north/pump/relay-welded";
        var circuit = new LiveCircuit(site => site.WithContactor());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Pump));
        circuit.Weld(Pump);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsCut);
        circuit.Rig.LeapFor(Duration.FromMinutes(1) + Duration.FromSeconds(seconds));
        circuit.Rig.Scan(new ResetLatch("Ada", key));
        circuit.Rig.Scan(new ConfirmReset("Ben", key));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsCut);
        circuit.Rig.LeapFor(Duration.FromSeconds(4));
        Assert.True(circuit.Rig.IsCut);
    }

    private static void UntilTheNextFlood(LiveCircuit circuit)
    {
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Pump));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Pump));
    }
}
