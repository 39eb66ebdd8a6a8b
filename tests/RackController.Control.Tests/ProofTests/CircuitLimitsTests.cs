using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.ProofTests;

/// <summary>A circuit that several racks share is tested as often as the most careful wants, at the pace of the slowest.</summary>
public class CircuitLimitsTests
{
    [Fact]
    public void ASensorOfACircuitThatNothingDrawsFromHasNoTest()
    {
        var site = ProofSite.Whole;
        var spare = site.Circuits[0] with { Id = new CircuitId(1), Name = "spare sockets", SupplySense = null };
        var meter = site.Sensors.Single(sensor => sensor.Kind == SensorKind.CircuitCurrent) with
        {
            Id = new SensorId(site.Sensors.Length),
            Name = "spare sockets/current",
            Circuit = spare.Id,
        };
        var rig = new Rig(site with { Circuits = [.. site.Circuits, spare], Sensors = [.. site.Sensors, meter] });
        Assert.DoesNotContain(rig.Control.ProofTests(), test => test.Item == meter.Name);
    }

    [Fact]
    public void OfSeveralRacksTheMostCarefulOneIsGoneBy()
    {
        var site = Sites.ManyRacks(2, racksToACircuit: 2).WithLimits(limits => limits with
        {
            SupplySenseTestInterval = Duration.FromDays(10),
            CurrentTestInterval = Duration.FromDays(1_000),
            TestStepWithin = Duration.FromMinutes(5),
            PumpRest = Duration.FromMinutes(1),
            RelayRest = Duration.FromSeconds(20),
        });
        var limits = CircuitTests.LimitsOf(site, site.Circuits[0].Id);
        Assert.Equal(Duration.FromDays(10), limits.SupplySenseTestInterval);
        Assert.Equal(Duration.FromDays(180), limits.CurrentTestInterval);
        Assert.Equal(Duration.FromMinutes(5), limits.TestStepWithin);
        Assert.Equal(Duration.FromMinutes(15), limits.PumpRest);
        Assert.Equal(Duration.FromSeconds(20), limits.RelayRest);
    }
}
