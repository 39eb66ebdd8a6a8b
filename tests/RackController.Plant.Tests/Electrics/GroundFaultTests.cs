using RackController.Model;

namespace RackController.Plant.Tests;

public class GroundFaultTests
{
    [Theory]
    // UL 943: T = (20 / I)^1.43 s for 6 to 264 mA (schneider-electric.us FA105578); the numbers are arithmetic.
    [InlineData(6, 5.594)]
    [InlineData(10, 2.695)]
    [InlineData(20, 1.000)]
    [InlineData(30, 0.560)]
    [InlineData(50, 0.270)]
    [InlineData(100, 0.100)]
    [InlineData(264, 0.0250)]
    public void OnANorthAmericanCircuitTheSlowEdgeTakesTheTimeOfUl943(double leakMilliA, double seconds)
    {
        Assert.Equal(seconds, GroundFaultCurve.Of(120, BreakerEdge.Slow).SecondsToTrip(leakMilliA), 0.0006);
        Assert.InRange(GroundFaultCurve.Of(120, BreakerEdge.Fast).SecondsToTrip(leakMilliA), 0.001, seconds + 0.0006);
    }

    [Theory]
    // Class A: not below 4 mA, must at 6 mA (profengineering.com/glossary/gfci, quoting NEC Art. 100); between them it may.
    [InlineData(3.99, false, false)]
    [InlineData(4, true, false)]
    [InlineData(5.99, true, false)]
    [InlineData(6, true, true)]
    public void BetweenFourAndSixMilliamperesTheFastEdgeOpensAndTheSlowOneHolds(double leakMilliA, bool fast, bool slow)
    {
        Assert.Equal(fast, double.IsFinite(GroundFaultCurve.Of(120, BreakerEdge.Fast).SecondsToTrip(leakMilliA)));
        Assert.Equal(slow, double.IsFinite(GroundFaultCurve.Of(120, BreakerEdge.Slow).SecondsToTrip(leakMilliA)));
    }

    [Theory]
    // IEC 61008-1, 30 mA: 0.3 s at I, 0.15 s at 2 I, 0.04 s at 5 I; not up to I / 2 (from memory).
    [InlineData(15, double.PositiveInfinity, double.PositiveInfinity)]
    [InlineData(15.1, 0.025, double.PositiveInfinity)]
    [InlineData(29.9, 0.025, double.PositiveInfinity)]
    [InlineData(30, 0.025, 0.3)]
    [InlineData(60, 0.025, 0.15)]
    [InlineData(150, 0.025, 0.04)]
    public void OnAEuropeanCircuitADeviceOfThirtyMilliamperesMeetsIec61008(double leakMilliA, double fastS, double slowS)
    {
        Assert.Equal(fastS, GroundFaultCurve.Of(230, BreakerEdge.Fast).SecondsToTrip(leakMilliA));
        Assert.Equal(slowS, GroundFaultCurve.Of(230, BreakerEdge.Slow).SecondsToTrip(leakMilliA));
    }

    [Fact]
    public void ALeakageThatGrowsGoesOnFromTheShareOfTheTimeThatIsSpent()
    {
        var protection = new GroundFaultProtection(GroundFaultCurve.Of(120, BreakerEdge.Slow));
        protection.Carry(20, Seconds(0));
        Assert.Equal(Seconds(1), protection.TripsAt);
        protection.Carry(10, Seconds(0.5));
        Assert.Equal(0.5 + 2.695 / 2, protection.TripsAt.Nanoseconds / 1e9, 0.001);
    }

    [Fact]
    public void ALeakageThatMayStayIsForgotten()
    {
        var protection = new GroundFaultProtection(GroundFaultCurve.Of(120, BreakerEdge.Slow));
        protection.Carry(20, Seconds(0));
        protection.Carry(3, Seconds(0.9));
        Assert.Equal(MonotonicTime.Never, protection.TripsAt);
        protection.Carry(20, Seconds(60));
        Assert.Equal(Seconds(61), protection.TripsAt);
    }

    private static MonotonicTime Seconds(double seconds) => new((long)Math.Round(seconds * 1e9));
}
