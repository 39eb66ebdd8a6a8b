using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests.Electrics;

/// <summary>A time relay in the pump's own wire needs no controller, and counts only while the pump's relay gives it power.</summary>
public sealed class TimeCutoutRelayTests
{
    private const double AfterS = 1200;
    private static readonly RackId north = new(0);
    private readonly TestSite rack = new(
        1, site: Sites.OneRack(1).WithRack(rack => rack with { TimeCutout = new TimeCutout(Duration.FromSeconds(AfterS)) }));

    [Fact]
    public void APumpWhoseRelayHasWeldedStopsAtTheVeryMomentAtWhichItsTimeIsOver()
    {
        Weld();
        while (!rack.Truth.IsTimeCutoutOpen)
        {
            Assert.True(rack.Truth.PumpTurns);
            Assert.True(rack.Plant.AdvanceToNews(rack.After(7200)));
        }

        Assert.Equal(MonotonicTime.Zero + Duration.FromSeconds(AfterS), rack.Now);
        Assert.Equal(rack.Now, rack.Truth.TimeCutoutFirstOpenedAt);
        Assert.False(rack.Truth.PumpTurns);
        Assert.True(rack.Load("north/pump").RelayOn);
        rack.To(50_000);
        Assert.False(rack.Truth.PumpTurns);
    }

    [Fact]
    public void ItClosesOnceThePumpsRelayHasOpenedAndCountsAnew()
    {
        rack.Flood();
        rack.To(AfterS + 10);
        Assert.False(rack.Truth.PumpTurns);
        rack.Switch("north/pump", on: false);
        Assert.False(rack.Truth.IsTimeCutoutOpen);
        rack.Switch("north/pump", on: true);
        rack.To(2 * AfterS);
        Assert.True(rack.Truth.PumpTurns);
        Assert.Equal(MonotonicTime.Zero + Duration.FromSeconds(AfterS), rack.Truth.TimeCutoutFirstOpenedAt);
    }

    [Fact]
    public void AMomentWithoutSupplyLetsItCountAnew()
    {
        Weld();
        rack.Inject(FaultKind.SupplyOutage, 1, fault => fault with { Circuit = new CircuitId(0), From = Time(1000), Until = Time(1001) });
        rack.To(1001 + AfterS - 1);
        Assert.True(rack.Truth.PumpTurns);
        rack.To(1001 + AfterS);
        Assert.False(rack.Truth.PumpTurns);
    }

    [Fact]
    public void OneThatHangsOpensNothing()
    {
        Weld();
        rack.Inject(FaultKind.TimeCutoutStuck, 1e6, fault => fault with { Rack = north });
        rack.To(50_000);
        Assert.True(rack.Truth.PumpTurns);
        Assert.Null(rack.Truth.TimeCutoutFirstOpenedAt);
    }

    [Fact]
    public void OneThatIsTurnedDownOpensEarlyAndStaysOpenWhenItIsTurnedBack()
    {
        Weld();
        rack.Inject(FaultKind.TimeCutoutTurned, 100, fault => fault with { Rack = north, Size = 40 });
        rack.To(39);
        Assert.True(rack.Truth.PumpTurns);
        rack.To(40);
        Assert.False(rack.Truth.PumpTurns);
        rack.To(500);
        Assert.False(rack.Truth.PumpTurns);
    }

    [Fact]
    public void ARackWithoutOneHasNothingToHang()
    {
        var refused = Assert.Throws<ArgumentException>(() =>
            new TestSite(1).Inject(FaultKind.TimeCutoutStuck, 50, fault => fault with { Rack = north }));
        Assert.Contains("needs a rack with a time relay in its pump's wire", refused.Message, StringComparison.Ordinal);
    }

    private static MonotonicTime Time(double seconds) => MonotonicTime.Zero + Duration.FromSeconds(seconds);

    private void Weld() => rack.Inject(FaultKind.RelayWelded, 1e6, fault => fault with { Load = rack.Site.LoadNamed("north/pump") });
}
