using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Where racks share something, the most careful of their limits holds for all.</summary>
public class CircuitLimitsTests
{
    private static readonly InterlockLimits careful = InterlockLimits.Default with
    {
        SupplyQuietPeriod = Duration.FromSeconds(90),
        RestartSpacing = Duration.FromSeconds(20),
        SwitchingStagger = Duration.FromSeconds(3),
        SupplyTripsToLatch = 2,
        CircuitOverLimitAfter = Duration.FromSeconds(5),
        CircuitOverLimitReturn = Duration.FromMinutes(40),
        CircuitOverLimitsToLatch = 2,
        LoadCheckEvery = Duration.FromHours(1),
        RelayRest = Duration.FromSeconds(8),
        ScanRecovery = Duration.FromSeconds(25),
        ResetConfirmWithin = Duration.FromSeconds(15),
    };

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void OfTwoRacksOnACircuitTheMoreCarefulOneIsGoneBy(int rack)
    {
        var limits = CircuitLimits.Of(WithCareful(rack), new CircuitId(0));
        Assert.Equal(
            new CircuitLimits(
                careful.SupplyQuietPeriod, careful.RestartSpacing, careful.SwitchingStagger, careful.SupplyTripsToLatch,
                careful.CircuitOverLimitAfter, careful.CircuitOverLimitReturn, careful.CircuitOverLimitsToLatch, careful.LoadCheckEvery,
                careful.RelayRest),
            limits);
    }

    [Fact]
    public void ARackOnAnotherCircuitIsNotAsked()
    {
        var site = Sites.ManyRacks(2, racksToACircuit: 1);
        site = site with { Racks = site.Racks.SetItem(1, site.Racks[1] with { Limits = careful }) };
        Assert.Equal(InterlockLimits.Default.SupplyQuietPeriod, CircuitLimits.Of(site, new CircuitId(0)).SupplyQuietPeriod);
        Assert.Equal(careful.SupplyQuietPeriod, CircuitLimits.Of(site, new CircuitId(1)).SupplyQuietPeriod);
    }

    [Fact]
    public void ACircuitWithoutLoadsGoesByTheUsual() => Assert.Equal(
        InterlockLimits.Default.RestartSpacing, CircuitLimits.Of(Sites.OneRack() with { Loads = [] }, new CircuitId(0)).RestartSpacing);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void AfterAScanFaultAllWaitForTheSlowestToRecover(int rack)
    {
        var rig = new Rig(WithCareful(rack));
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Conditions = ScanConditions.Good with { Io = new IoOutcome("chip relays is gone") };
        rig.Scan();
        var failed = rig.Now.Monotonic;
        rig.Conditions = ScanConditions.Good;
        rig.LeapUntil(() => rig.IsOn("rack 1/tier 1 light"));
        Assert.Equal(careful.ScanRecovery, rig.Now.Monotonic - failed);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void AResetIsConfirmedWithinTheShortestTime(int rack)
    {
        var rig = new Rig(WithCareful(rack));
        rig.Set("rack 1/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Scan(new ResetLatch("Ada", "rack 1/high-water"));
        Assert.Equal("reset: confirm within 15 s", rig.Events.Last(each => each.Kind == EventKind.Request).What);
    }

    private static Site WithCareful(int rack)
    {
        var site = Sites.ManyRacks(2, racksToACircuit: 2);
        return site with { Racks = site.Racks.SetItem(rack, site.Racks[rack] with { Limits = careful }) };
    }
}
