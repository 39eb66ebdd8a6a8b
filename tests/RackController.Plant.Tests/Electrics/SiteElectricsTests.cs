using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class SiteElectricsTests
{
    private const string Sockets = "sockets/supply sense";

    [Fact]
    public void ACircuitCarriesTheCurrentsOfItsLoads()
    {
        // I = P / (U cos phi): pump 45 W at 0.6 on 120 V is 0.625 A, light 80 W at 0.95 is 0.7018 A, aerator 5 W and fan 12 W at 1.
        var rack = new TestSite(1, site: With(Sites.OneRack(1), load => load.Kind switch
        {
            LoadKind.Pump => load with { PowerFactor = 0.6 },
            LoadKind.Light => load with { PowerFactor = 0.95 },
            _ => load,
        }));
        rack.Switch("north/pump", on: true);
        rack.Switch("north/tier 1 light", on: true);
        rack.To(5);
        Assert.Equal(0.625 + 0.70175 + 17.0 / 120, rack.Plant.Circuits[0].CurrentA, 1e-4);
    }

    [Fact]
    public void EnergyIsRealPowerTimesTime()
    {
        // 700 W for 16 h is 11.2 kWh, arithmetic; power factor does not enter.
        var rack = new TestSite(1, site: With(Sites.OneRack(1), load =>
            load.Kind == LoadKind.Light ? load with { PowerW = 700, PowerFactor = 0.9 } : load));
        rack.Switch("north/tier 1 light", on: true);
        rack.To(16 * 3600);
        Assert.Equal(11.2, rack.Load("north/tier 1 light").EnergyKWh, 1e-9);
        Assert.Equal(11.2 + 0.017 * 16, rack.Plant.Circuits[0].EnergyKWh, 1e-9);
    }

    [Fact]
    public void AMotorDrawsItsStartingCurrentForHalfASecond()
    {
        var rack = new TestSite(1, site: With(Sites.OneRack(1), load =>
            load.Kind == LoadKind.Pump ? load with { InrushMultiple = 6 } : load));
        rack.Switch("north/pump", on: true);
        Assert.Equal(6 * 45.0 / 120, rack.Load("north/pump").CurrentA, 1e-9);
        rack.To(0.51);
        Assert.Equal(45.0 / 120, rack.Load("north/pump").CurrentA, 1e-9);
    }

    [Theory]
    [InlineData(BreakerEdge.Fast, 9, 11)]
    [InlineData(BreakerEdge.Slow, 119, 121)]
    public void TwiceTheRatingOpensTheBreakerInItsTimeAndItStaysOpen(BreakerEdge edge, double holds, double tripped)
    {
        // 3600 W on 120 V and 15 A, the few watts of fan and aerator beside it.
        var rack = new TestSite(
            1,
            PlantStart.Default with { Breakers = edge },
            With(Sites.OneRack(1), load => load.Kind == LoadKind.Light ? load with { PowerW = 3583 } : load));
        rack.Switch("north/tier 1 light", on: true);

        rack.To(holds);
        Assert.Equal(BreakerState.Closed, rack.Plant.Circuits[0].Breaker);
        Assert.Equal(1, rack.Reading(Sockets).Value);

        rack.To(tripped);
        Assert.Equal(BreakerState.TrippedByOverload, rack.Plant.Circuits[0].Breaker);
        Assert.Equal(0, rack.Reading(Sockets).Value);
        Assert.Equal(0, rack.Plant.Circuits[0].CurrentA);
        Assert.False(rack.Load("north/fan").Powered);
        Assert.True(rack.Load("north/fan").RelayOn);

        rack.Switch("north/tier 1 light", on: false);
        rack.To(5000);
        Assert.False(rack.Plant.Circuits[0].SupplyPresent);
        rack.Inject(FaultKind.BreakerClosed, 1, fault => fault with { Circuit = new CircuitId(0) });
        Assert.True(rack.Load("north/fan").Powered);
    }

    [Fact]
    public void AVeryHighInrushOpensTheBreakerAtOnce()
    {
        var rack = new TestSite(1, site: With(Sites.OneRack(1), load =>
            load.Kind == LoadKind.Light ? load with { PowerW = 700, InrushMultiple = 100 } : load));
        rack.Switch("north/tier 1 light", on: true);
        Assert.Equal(BreakerState.TrippedByShortCircuit, rack.Plant.Circuits[0].Breaker);
    }

    [Fact]
    public void AWholeRackStaysWithinItsCircuitForADay()
    {
        var rack = new TestSite(5);
        foreach (var load in rack.Site.Loads)
        {
            rack.Switch(load.Name, on: true);
        }

        rack.To(86_400);
        Assert.True(rack.Plant.Circuits[0].SupplyPresent);
    }

    [Fact]
    public void ReleasedRelaysFallToTheirContactAtRest()
    {
        var rack = new TestSite(1);
        rack.Switch("north/fan", on: false);
        rack.Switch("north/pump", on: true);
        rack.Plant.ReleaseRelays(rack.After(1));
        Assert.True(rack.Load("north/fan").Powered);
        Assert.False(rack.Load("north/pump").Powered);
    }

    private static Site With(Site site, Func<Load, Load> change) => site with { Loads = [.. site.Loads.Select(change)] };
}
