using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>How row dead-air comes back of a fan that runs only while the air is warm.</summary>
public sealed class LoadDeadTests
{
    private const string Fan = "north/fan";
    private const string Key = "north/fan/dead-air";
    private const string Air = "north/air temperature";

    [Fact]
    public void OnceAcknowledgedItIsGoneWhenNobodyHasWantedTheFanForAWhile()
    {
        var circuit = WithDeadFan();
        circuit.Rig.Ask(new Acknowledge("Ada", Key));
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        Assert.NotNull(circuit.Rig.Alarm(Key));
        circuit.Rig.Set(Air, 18);
        circuit.Rig.LeapFor(Duration.FromMinutes(19));
        Assert.NotNull(circuit.Rig.Alarm(Key));
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.Null(circuit.Rig.Alarm(Key));
    }

    [Fact]
    public void ItIsToldAnewWhenTheFanIsWantedAndStillDead()
    {
        var circuit = WithDeadFan();
        circuit.Rig.Ask(new Acknowledge("Ada", Key));
        circuit.Rig.Set(Air, 18);
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        circuit.Rig.Set(Air, 26);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm(Key)!.State);
    }

    [Fact]
    public void WhileNobodyKnowsOfItItStandsHoweverLongTheFanIsNotWanted()
    {
        var circuit = WithDeadFan();
        circuit.Rig.Set(Air, 18);
        for (var hour = 1; hour <= 30; hour++)
        {
            circuit.Rig.LeapFor(Duration.FromHours(1));
            Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm(Key)!.State);
        }
    }

    [Fact]
    public void WhatWasAcknowledgedAndIsGoneIsNotKnownOfWhenTheFanDiesAnew()
    {
        var circuit = WithDeadFan();
        circuit.Rig.Ask(new Acknowledge("Ada", Key));
        circuit.Rig.Set(Air, 18);
        var off = circuit.Rig.Now.Monotonic;
        circuit.Rig.LeapUntil(() => circuit.Rig.Alarm(Key) is null);
        Assert.InRange((circuit.Rig.Now.Monotonic - off).TotalSeconds, 1200, 1200.5);

        circuit.Rig.Set(Air, 26);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Rig.Set(Air, 18);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm(Key)!.State);
    }

    [Fact]
    public void AnOutageBringsItBackOnceAndTriesNothing()
    {
        const string sense = "sockets/supply sense";
        var circuit = WithDeadFan();
        circuit.Rig.Ask(new Acknowledge("Ada", Key));
        circuit.Rig.Set(sense, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(19));
        Assert.NotNull(circuit.Rig.Alarm(Key));
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.Null(circuit.Rig.Alarm(Key));
        circuit.Rig.Set(sense, 1);
        circuit.Rig.LeapFor(Duration.FromMinutes(3));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm(Key)!.State);
        circuit.Rig.Ask(new Acknowledge("Ada", Key));
        circuit.Rig.LeapFor(Duration.FromSeconds(1));
        var before = circuit.Rig.Events.Count;
        circuit.Rig.LeapFor(Duration.FromHours(10));
        Assert.DoesNotContain(circuit.Rig.Events.Skip(before), each => each is { Subject: Key, Kind: EventKind.Alarm });
    }

    [Fact]
    public void OfADeadLightItStandsThoughAcknowledgedAndOut()
    {
        const string light = "north/tier 1 light";
        var circuit = new LiveCircuit();
        circuit.Draws(light, 0);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(light));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Rig.Ask(new Acknowledge("Ada", $"{light}/dead-load"));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(light));
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.Equal(AlarmState.Acknowledged, circuit.Rig.Alarm($"{light}/dead-load")!.State);
    }

    [Fact]
    public void OfAFanThatIsWantedItStandsThoughAcknowledged()
    {
        var circuit = WithDeadFan();
        circuit.Rig.Ask(new Acknowledge("Ada", Key));
        circuit.Rig.LeapFor(Duration.FromHours(30));
        Assert.Equal(AlarmState.Acknowledged, circuit.Rig.Alarm(Key)!.State);
    }

    private static LiveCircuit WithDeadFan()
    {
        var circuit = new LiveCircuit(WarmAirRunsTheFan);
        circuit.Rig.Set(Air, 18);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        circuit.Draws(Fan, 0);
        circuit.Rig.Set(Air, 26);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm(Key)!.State);
        return circuit;
    }

    private static Site WarmAirRunsTheFan(Site site)
    {
        var air = new Sensor
        {
            Id = new SensorId(site.Sensors.Length),
            Name = Air,
            Kind = SensorKind.AirTemperature,
            Rack = new RackId(0),
            PlausibleMin = -20,
            PlausibleMax = 60,
            StaleAfter = Duration.FromSeconds(30),
        };
        var fan = site.LoadNamed(Fan);
        return (site with { Sensors = site.Sensors.Add(air) }).WithSchedule(plan => plan with
        {
            Runs = [.. plan.Runs.Where(run => run.Load != fan), new RunByReading(fan, air.Id, OnAbove: 24, OffBelow: 22)],
        });
    }
}
