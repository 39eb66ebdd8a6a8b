using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row supply-lost on a circuit without a supply sense, by its current.</summary>
public class SupplyByCurrentTests
{
    private const string Key = "sockets/supply-lost";

    [Fact]
    public void NoCurrentAtAllWhileTwoLoadsAreToldOnIsAnOutage()
    {
        var circuit = Unsensed();
        circuit.Now(() => circuit.Supply = 0);
        var gone = circuit.Rig.Now.Monotonic;
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/fan"));

        // From the scan that sees it.
        Assert.Equal(Duration.FromSeconds(5.1), circuit.Rig.Now.Monotonic - gone);
        Assert.True(circuit.Rig.IsOn("north/aerator"));
        Assert.Equal("the supply of the circuit is lost", circuit.Rig.Alarm(Key)!.Cause);
    }

    [Fact]
    public void TheSupplyIsBackWhenTheOneLoadThatStaysToldOnDrawsAgain()
    {
        var circuit = Unsensed();
        circuit.Now(() => circuit.Supply = 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        circuit.Now(() => circuit.Supply = 1);
        circuit.Rig.LeapFor(Duration.FromSeconds(6));
        Assert.False(circuit.Rig.IsOn("north/aerator"));
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.True(circuit.Rig.IsOn("north/aerator"));
        Assert.True(circuit.Rig.IsOn("north/fan"));
    }

    [Fact]
    public void ADeadLoadDoesNotFeelForLong()
    {
        var circuit = Unsensed();
        circuit.Draws("north/aerator", 0);
        circuit.Now(() => circuit.Supply = 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Now(() => circuit.Supply = 1);
        circuit.Rig.LeapFor(Duration.FromMinutes(10));
        Assert.True(circuit.Rig.IsOn("north/fan"));
    }

    [Fact]
    public void OneLoadThatDrawsNothingIsNoOutage()
    {
        var circuit = Unsensed();
        circuit.Draws("north/aerator", 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        Assert.Null(circuit.Rig.Alarm(Key));
    }

    [Fact]
    public void WhatASensorSaidBeforeItFellSilentIsNoOutage()
    {
        var circuit = Unsensed();

        // It is stale after 30 s.
        circuit.Rig.Silence("sockets/current");
        circuit.Rig.ScanFor(Duration.FromSeconds(27));
        circuit.Now(() => circuit.Supply = 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.True(circuit.Rig.IsOn("north/fan"));
        circuit.Rig.Speak("sockets/current");
        circuit.Rig.ScanFor(Duration.FromSeconds(4));
        Assert.True(circuit.Rig.IsOn("north/fan"));
        circuit.Rig.ScanFor(Duration.FromSeconds(5));
        Assert.False(circuit.Rig.IsOn("north/fan"));
    }

    [Fact]
    public void AnOutageLastsWhileItsSensorIsSilent()
    {
        var circuit = Unsensed();
        circuit.Now(() => circuit.Supply = 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Rig.Silence("sockets/current");
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        Assert.Equal("the supply of the circuit is lost", circuit.Rig.Why("north/fan").Summary);
    }

    [Fact]
    public void TheFeelersTakeTurnsOfFiveMinutes()
    {
        var circuit = Unsensed();
        circuit.Now(() => circuit.Supply = 0);
        circuit.Rig.ScanFor(Duration.FromSeconds(6));
        var lost = circuit.Rig.Now.Monotonic;
        foreach (var feeler in new[] { "north/fan", "north/aerator", "north/fan" })
        {
            var other = feeler == "north/fan" ? "north/aerator" : "north/fan";
            circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(feeler));
            Assert.False(circuit.Rig.IsOn(other));
            Assert.InRange((circuit.Rig.Now.Monotonic - lost).TotalSeconds, 290, 310);
            lost = circuit.Rig.Now.Monotonic;
        }
    }

    [Fact]
    public void ALatchedCircuitIsNotFelt()
    {
        var circuit = Unsensed();
        for (var loss = 0; loss < 3; loss++)
        {
            circuit.Now(() => circuit.Supply = 0);
            circuit.Rig.LeapFor(Duration.FromMinutes(1));
            circuit.Now(() => circuit.Supply = loss < 2 ? 1 : 0);
            circuit.Rig.LeapFor(Duration.FromMinutes(10));
        }

        Assert.False(circuit.Rig.IsOn("north/aerator"));
        Assert.False(circuit.Rig.IsOn("north/fan"));
    }

    [Fact]
    public void WhatIsOnOnAnotherCircuitDoesNotMakeADeadLoadAnOutage()
    {
        var circuit = Unsensed(site => site with
        {
            Circuits = [site.Circuits[0], site.Circuits[0] with { Id = new CircuitId(1), Name = "other sockets" }],
            Loads = [.. site.Loads.Select(load => load.Kind == LoadKind.Aerator ? load : load with { Circuit = new CircuitId(1) })],
        });
        circuit.Now(() => circuit.Supply = 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        Assert.True(circuit.Rig.IsOn("north/fan"));
        Assert.Null(circuit.Rig.Alarm(Key));
    }

    [Fact]
    public void ASenseThatSaysTheSupplyIsThereIsBelieved()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Now(() => circuit.Supply = 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(circuit.Rig.IsOn("north/fan"));
    }

    [Fact]
    public void AnOutageThatARestartInterruptsIsOne()
    {
        var circuit = Unsensed();
        circuit.Now(() => circuit.Supply = 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Rig.Restart(Duration.FromMinutes(1));
        circuit.Rig.LeapFor(Duration.FromMinutes(4));
        Assert.False(circuit.Rig.IsOn("north/fan"));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm(Key)!.State);
    }

    private static LiveCircuit Unsensed(Func<Site, Site>? change = null)
    {
        change ??= site => site;
        var circuit = new LiveCircuit(site => change(site with
        {
            Circuits = [site.Circuits[0] with { SupplySense = null }],
            Sensors = site.Sensors.SetItem(2, site.Sensors[2] with
            {
                Kind = SensorKind.LeakRope,
                Rack = new RackId(0),
                Circuit = null,
                Name = "north/second rope",
            }),
        }));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        return circuit;
    }
}
