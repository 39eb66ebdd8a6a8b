using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests.Electrics;

/// <summary>A float in the pump's own wire needs no controller, and lets nothing run again until somebody has looked.</summary>
public sealed class CutoutSwitchTests
{
    private static readonly RackId north = new(0);

    /// <summary>Straight walls: 40 L and 80 mm, so 20 mm are 10 L, which a leak of 10 L/min gives in a minute and a little.</summary>
    [Fact]
    public void AWetFloatStopsAPumpWhoseRelayHasWelded()
    {
        var rack = WithCutout();
        Weld(rack);
        Leak(rack);
        rack.To(60);
        Assert.True(rack.Truth.PumpTurns);
        Assert.Null(rack.Truth.FloatCutoutFirstOpenedAt);

        rack.To(300);
        Assert.True(rack.Load("north/pump").RelayOn);
        Assert.False(rack.Load("north/pump").Powered);
        Assert.False(rack.Truth.PumpTurns);
        Assert.True(rack.Truth.IsFloatCutoutOpen);
    }

    [Fact]
    public void ItOpensAtTheVeryMomentAtWhichTheWaterReachesIt()
    {
        var rack = WithCutout();
        Weld(rack);
        Leak(rack);
        while (!rack.Truth.IsFloatCutoutOpen)
        {
            Assert.True(rack.Plant.AdvanceToNews(rack.After(3600)));
        }

        Assert.Equal(10, rack.Truth.DripTrayL, 1e-9);
        Assert.Equal(rack.Now, rack.Truth.FloatCutoutFirstOpenedAt);
    }

    [Fact]
    public void ItStaysOpenWhenItDriesUntilSomebodyResetsIt()
    {
        var rack = WithCutout();
        Weld(rack);
        Overfill(rack, 30);
        Assert.True(rack.Truth.IsFloatCutoutOpen);
        Reset(rack);
        Assert.True(rack.Truth.IsFloatCutoutOpen);
        rack.Inject(FaultKind.FloorMopped, 1, fault => fault with { Rack = north });
        rack.To(100);
        Assert.False(rack.Truth.PumpTurns);
        Reset(rack);
        Assert.True(rack.Truth.PumpTurns);
        Assert.Equal(MonotonicTime.Zero, rack.Truth.FloatCutoutFirstOpenedAt);
    }

    [Fact]
    public void OneThatIsHeldDownOpensNothingUntilItIsFree()
    {
        var rack = WithCutout();
        Weld(rack);
        rack.Inject(FaultKind.FloatCutoutStuck, 50, fault => fault with { Rack = north });
        Overfill(rack, 30);
        rack.To(49);
        Assert.True(rack.Truth.PumpTurns);
        rack.To(50);
        Assert.False(rack.Truth.PumpTurns);
    }

    [Fact]
    public void AHandThatHoldsItUpOpensItAndNoResetClosesItBeforeTheHandLetsGo()
    {
        var rack = WithCutout();
        Weld(rack);
        rack.Inject(FaultKind.FloatCutoutLifted, 10, fault => fault with { Rack = north });
        rack.To(5);
        Reset(rack);
        Assert.False(rack.Truth.PumpTurns);
        rack.To(20);
        Assert.False(rack.Truth.PumpTurns);
        Reset(rack);
        Assert.True(rack.Truth.PumpTurns);
    }

    [Fact]
    public void OneThatDoesNotLatchLetsThePumpRunAgainByItself()
    {
        var rack = WithCutout();
        Weld(rack);
        rack.Inject(FaultKind.FloatCutoutUnlatched, 60, fault => fault with { Rack = north });
        rack.Inject(FaultKind.FloatCutoutLifted, 10, fault => fault with { Rack = north });
        rack.To(5);
        Assert.False(rack.Truth.PumpTurns);
        rack.To(20);
        Assert.True(rack.Truth.PumpTurns);
    }

    [Fact]
    public void OneThatIsHeldDownIsNotToBeLifted()
    {
        var rack = WithCutout();
        Weld(rack);
        rack.Inject(FaultKind.FloatCutoutStuck, 50, fault => fault with { Rack = north });
        rack.Inject(FaultKind.FloatCutoutLifted, 10, fault => fault with { Rack = north });
        rack.To(40);
        Assert.True(rack.Truth.PumpTurns);
    }

    [Fact]
    public void OneAboveAStandpipeActsOnThatTray()
    {
        var site = Sites.OneRack(1).WithRack(rack => rack with
        {
            FloatCutout = new FloatCutout(1, 70),
            Drain = new DrainStack(40, 0.1),
        });
        var rack = new TestSite(1, site: site);
        rack.Flood();
        rack.To(1200);
        Assert.True(rack.Truth.IsFloatCutoutOpen);
        Assert.Equal(0, rack.Truth.SpilledL);
    }

    /// <summary>Without a differential it would open and close each few nanoseconds, and no time would ever pass.</summary>
    [Fact]
    public void OneAboveAStandpipeThatDoesNotLatchSwitchesThePumpNowAndThen()
    {
        var site = Sites.OneRack(1).WithRack(rack => rack with { FloatCutout = new FloatCutout(1, 35) });
        var rack = new TestSite(1, site: site);
        rack.Inject(FaultKind.FloatCutoutUnlatched, 1e6, fault => fault with { Rack = north });
        rack.Flood();
        var (turns, turned) = (0, false);
        while (rack.Now < MonotonicTime.Zero + Duration.FromMinutes(10))
        {
            rack.Plant.AdvanceToNews(MonotonicTime.Zero + Duration.FromMinutes(10));
            turns += rack.Truth.PumpTurns && !turned ? 1 : 0;
            turned = rack.Truth.PumpTurns;
            Assert.InRange(turns, 0, 100);
        }

        Assert.InRange(turns, 3, 100);
        Assert.InRange(rack.Truth.Tiers[0].DepthMm, 32.9, 35.1);
    }

    [Fact]
    public void ARackWithoutOneHasNothingToHoldDown()
    {
        var rack = new TestSite(1);
        var refused = Assert.Throws<ArgumentException>(() =>
            rack.Inject(FaultKind.FloatCutoutStuck, 50, fault => fault with { Rack = north }));
        Assert.Contains("needs a rack with a float in its pump's wire", refused.Message, StringComparison.Ordinal);
    }

    private static TestSite WithCutout()
    {
        var site = Sites.OneRack(1).WithRack(rack => rack with
        {
            DripTray = new DripTray(40, 80),
            FloatCutout = new FloatCutout(null, 20),
        });
        return new TestSite(1, site: site);
    }

    private static void Weld(TestSite rack)
    {
        rack.Inject(FaultKind.RelayWelded, 1e6, fault => fault with { Load = rack.Site.LoadNamed("north/pump") });
        rack.Switch("north/tier 1 valve", on: true);
    }

    private static void Leak(TestSite rack) =>
        rack.Inject(FaultKind.TrayLeak, 1e6, fault => fault with { Rack = north, TierNumber = 1, Size = 10 });

    private static void Overfill(TestSite rack, double litres) => rack.Inject(
        FaultKind.ReservoirRefilled, 1, fault => fault with { Rack = north, Size = litres + 160 - rack.Truth.ReservoirVolumeL });

    private static void Reset(TestSite rack) => rack.Inject(FaultKind.FloatCutoutReset, 1, fault => fault with { Rack = north });
}
