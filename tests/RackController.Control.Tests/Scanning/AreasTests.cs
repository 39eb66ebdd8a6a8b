using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Scanning;

/// <summary>What is looked at together: a circuit with the currents that flow in it, a rack with the rest of its sensors, and with a
/// circuit every rack that has a load on it.</summary>
public class AreasTests
{
    [Fact]
    public void ThePumpsCurrentIsLookedAtWithItsCircuitAndTheRestWithTheRack()
    {
        var site = Sites.OneRack(tiers: 1).WithPumpCurrent();
        var areas = new Areas(site);
        Assert.Equal(["sockets/supply sense", "north/pump current"], areas.Of(new CircuitId(0)).Sensors.Select(sensor => sensor.Name));
        Assert.Equal(
            ["north/reservoir low float", "north/leak rope", "north/tier 1 high float"],
            areas.Of(new RackId(0)).Sensors.Select(sensor => sensor.Name));
        Assert.Equal(areas.Of(new CircuitId(0)), areas.Of(site.SensorNamed("north/pump current")));
        Assert.Equal(areas.Of(new RackId(0)), areas.Of(site.SensorNamed("north/leak rope")));
    }

    [Fact]
    public void ARackHoldsNoSensorOfAnother()
    {
        var areas = new Areas(Sites.ManyRacks(racks: 2, racksToACircuit: 1));
        Assert.All(areas.Of(new RackId(1)).Sensors, sensor => Assert.Equal(new RackId(1), sensor.Rack));
        Assert.Equal(["sockets 2/supply sense"], areas.Of(new CircuitId(1)).Sensors.Select(sensor => sensor.Name));
    }

    [Fact]
    public void ARackDrawsFromItsOwnCircuitOnly()
    {
        var areas = new Areas(Sites.ManyRacks(racks: 2, racksToACircuit: 1));
        Assert.Equal(
            [(areas.Racks[0], areas.Circuits[0]), (areas.Racks[1], areas.Circuits[1])],
            areas.All.SelectMany(area => areas.All.Where(other => areas.DrawsFrom(area, other)).Select(other => (area, other))));
    }

    [Fact]
    public void RacksThatShareACircuitBothDrawFromIt()
    {
        var areas = new Areas(Sites.ManyRacks(racks: 2, racksToACircuit: 2));
        Assert.All(areas.Racks, rack => Assert.True(areas.DrawsFrom(rack, areas.Circuits[0])));
    }
}
