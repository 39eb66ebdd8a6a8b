using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class SupplyFaultTests
{
    private const string Pump = "north/pump";
    private const string Light = "north/tier 1 light";
    private static readonly CircuitId Sockets = new(0);

    [Theory]
    [InlineData(0.9)]
    [InlineData(0.75)]
    public void InABrownOutALightDrawsMoreCurrentForTheSamePowerAndLight(double share)
    {
        var rack = BrownOut(share);
        rack.Switch(Light, on: true);
        rack.To(3600);
        Assert.Equal(80 / (120 * share), rack.Load(Light).CurrentA, 1e-12);
        Assert.Equal(0.080, rack.Load(Light).EnergyKWh, 1e-12);
        Assert.Equal(180, rack.Truth.Tiers[0].PpfdUmolPerM2S);
    }

    [Fact]
    public void BelowNinetyVoltsALightIsOutAndDrawsNothing()
    {
        var rack = BrownOut(0.749);
        rack.Switch(Light, on: true);
        Assert.False(rack.Load(Light).Powered);
        Assert.Equal(0, rack.Load(Light).CurrentA);
        Assert.Equal(0, rack.Truth.Tiers[0].PpfdUmolPerM2S);
    }

    [Fact]
    public void InABrownOutThePumpTurnsSlowerLiftsLessAndDrawsMoreCurrent()
    {
        var (full, low) = (FloodInBrownOut(1), FloodInBrownOut(0.8));
        Assert.InRange(low.Truth.PumpFlowLpm, 0.5 * full.Truth.PumpFlowLpm, 0.98 * full.Truth.PumpFlowLpm);
        // Its real power is as n^2, its current as n^2 / v; n of a slip of 10 % at 80 % of the voltage is 0.953, arithmetic.
        Assert.Equal(0.953 * 0.953 * 45 / (120 * 0.8), low.Load(Pump).CurrentA, 1e-3);
        low.To(3600);
        Assert.Equal(0.953 * 0.953 * 0.045, low.Load(Pump).EnergyKWh, 1e-4);
    }

    [Fact]
    public void AWornPumpInABrownOutIsSlowerThanEither()
    {
        var (low, worn, both) = (FloodInBrownOut(0.8), FloodInBrownOut(1), FloodInBrownOut(0.8));
        worn.Inject(FaultKind.PumpWorn, 1e6, fault => fault with { Rack = new RackId(0), Size = 0.1 });
        both.Inject(FaultKind.PumpWorn, 1e6, fault => fault with { Rack = new RackId(0), Size = 0.1 });
        Assert.InRange(both.Truth.PumpFlowLpm, 0.1, Math.Min(low.Truth.PumpFlowLpm, worn.Truth.PumpFlowLpm) - 0.5);
    }

    [Fact]
    public void BelowSixtyPercentAPumpStallsOnItsStartingCurrentUntilTheVoltageIsBack()
    {
        var rack = new TestSite(1, site: WithInrush(6));
        rack.Flood();
        rack.To(10);
        rack.Inject(FaultKind.BrownOut, 60, fault => fault with { Circuit = Sockets, Size = 0.5 });
        Assert.False(rack.Truth.PumpTurns);
        Assert.Equal(6 * 0.5 * 45 / 120, rack.Load(Pump).CurrentA, 1e-12);

        rack.To(70);
        Assert.True(rack.Truth.PumpTurns);
        Assert.Equal(6 * 45.0 / 120, rack.Load(Pump).CurrentA, 1e-12);
        rack.To(71);
        Assert.Equal(45.0 / 120, rack.Load(Pump).CurrentA, 1e-12);
        // 45 W for 11 s, and the impedance of a rotor that stands, 6 x 45 W at a quarter of the power, for 60 s.
        Assert.Equal((45 * 11 + 6 * 45 * 0.25 * 60) / 3.6e6, rack.Load(Pump).EnergyKWh, 1e-12);
    }

    [Fact]
    public void ASeizedPumpDrawsThePowerOfItsStartingCurrent()
    {
        var rack = new TestSite(1, site: WithInrush(6));
        rack.Inject(FaultKind.PumpSeized, 1e6, fault => fault with { Rack = new RackId(0) });
        rack.Switch(Pump, on: true);
        rack.To(60);
        Assert.Equal(6 * 45 * 60 / 3.6e6, rack.Load(Pump).EnergyKWh, 1e-12);
    }

    [Fact]
    public void AValveHoldsAtSeventyPercentAndDoesNotOpenThere()
    {
        var rack = new TestSite(1);
        rack.Switch("north/tier 1 valve", on: true);
        rack.Inject(FaultKind.BrownOut, 60, fault => fault with { Circuit = Sockets, Size = 0.7 });
        Assert.True(rack.Truth.Tiers[0].ValveOpen);
        rack.Switch("north/tier 1 valve", on: false);
        rack.Switch("north/tier 1 valve", on: true);
        Assert.False(rack.Truth.Tiers[0].ValveOpen);
        rack.To(60);
        Assert.True(rack.Truth.Tiers[0].ValveOpen);
        rack.Inject(FaultKind.BrownOut, 60, fault => fault with { Circuit = Sockets, Size = 0.59 });
        Assert.False(rack.Truth.Tiers[0].ValveOpen);
    }

    [Theory]
    [InlineData(0.7, 1)]
    [InlineData(0.69, 0)]
    public void TheSupplySenseReadsAbsentBelowSeventyPercent(double share, double reads) =>
        Assert.Equal(reads, BrownOut(share).Reading("sockets/supply sense").Value);

    [Fact]
    public void TheDeepestOfSeveralBrownOutsCounts()
    {
        var rack = BrownOut(0.95);
        rack.Inject(FaultKind.BrownOut, 20, fault => fault with { Circuit = Sockets, Size = 0.8 });
        rack.Inject(FaultKind.SupplyOutage, 10, fault => fault with { Circuit = Sockets });
        rack.Switch(Light, on: true);
        Assert.Equal(0, rack.Load(Light).CurrentA);
        rack.To(10);
        Assert.Equal(80 / (120 * 0.8), rack.Load(Light).CurrentA, 1e-12);
        rack.To(20);
        Assert.Equal(80 / (120 * 0.95), rack.Load(Light).CurrentA, 1e-12);
    }

    [Theory]
    [InlineData(BreakerEdge.Fast, 0.025)]
    [InlineData(BreakerEdge.Slow, 2.695)]
    // UL 943: (20 / 10)^1.43 s at 10 mA (schneider-electric.us FA105578).
    public void ALeakageToEarthOpensTheProtectionInItsTime(BreakerEdge edge, double seconds)
    {
        var rack = new TestSite(1, PlantStart.Default with { Breakers = edge });
        rack.Switch(Light, on: true);
        Leak(rack, Light, 10);
        rack.To(seconds - 0.001);
        Assert.Equal(BreakerState.Closed, rack.Plant.Circuits[0].Breaker);
        rack.To(seconds + 0.001);
        Assert.Equal(BreakerState.TrippedByGroundFault, rack.Plant.Circuits[0].Breaker);
        Assert.False(rack.Load(Light).Powered);
    }

    [Fact]
    public void ALoadLeaksOnlyWhileItsContactIsClosedAndAClosedBreakerDoesNotMendIt()
    {
        var rack = new TestSite(1);
        Leak(rack, Light, 10);
        rack.To(100);
        Assert.True(rack.Plant.Circuits[0].SupplyPresent);
        rack.Switch(Light, on: true);
        rack.To(101);
        Assert.Equal(BreakerState.TrippedByGroundFault, rack.Plant.Circuits[0].Breaker);
        rack.Inject(FaultKind.BreakerClosed, 1, fault => fault with { Circuit = Sockets });
        Assert.True(rack.Plant.Circuits[0].SupplyPresent);
        rack.To(102);
        Assert.Equal(BreakerState.TrippedByGroundFault, rack.Plant.Circuits[0].Breaker);
        rack.Switch(Light, on: false);
        rack.Inject(FaultKind.BreakerClosed, 1, fault => fault with { Circuit = Sockets });
        rack.To(200);
        Assert.True(rack.Plant.Circuits[0].SupplyPresent);
    }

    [Fact]
    public void LeakagesOfSeveralLoadsAddUpAndSinkWithTheVoltage()
    {
        var rack = new TestSite(1);
        rack.Switch(Light, on: true);
        Leak(rack, Light, 2.2);
        Leak(rack, "north/fan", 2.2);
        rack.To(0.024);
        Assert.True(rack.Plant.Circuits[0].SupplyPresent);
        rack.To(0.025);
        Assert.False(rack.Plant.Circuits[0].SupplyPresent);

        var low = BrownOut(0.9);
        low.Switch(Light, on: true);
        Leak(low, Light, 2.2);
        Leak(low, "north/fan", 2.2);
        low.To(100);
        Assert.True(low.Plant.Circuits[0].SupplyPresent);
    }

    private static TestSite BrownOut(double share)
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.BrownOut, 1e6, fault => fault with { Circuit = Sockets, Size = share });
        return rack;
    }

    // The valve opens while it can.
    private static TestSite FloodInBrownOut(double share)
    {
        var rack = new TestSite(1);
        rack.Flood();
        rack.Inject(FaultKind.BrownOut, 1e6, fault => fault with { Circuit = Sockets, Size = share });
        return rack;
    }

    private static void Leak(TestSite rack, string load, double milliA) =>
        rack.Inject(FaultKind.EarthLeakage, 1e6, fault => fault with { Load = rack.Site.LoadNamed(load), Size = milliA });

    private static Site WithInrush(double multiple)
    {
        var site = Sites.OneRack(1);
        return site with { Loads = [.. site.Loads.Select(load => load with { InrushMultiple = multiple })] };
    }
}
