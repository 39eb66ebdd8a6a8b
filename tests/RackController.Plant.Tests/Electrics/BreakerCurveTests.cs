namespace RackController.Plant.Tests;

public class BreakerCurveTests
{
    private const double Hour = 3600;

    public static TheoryData<BreakerEdge> Edges() => [BreakerEdge.Fast, BreakerEdge.Slow];

    [Theory]
    [MemberData(nameof(Edges))]
    // UL 489, up to 30 A: holds 100 %, trips at 135 % within 1 h and at 200 % within 2 min (optifuse.com/blog/ul-circuit-breakers).
    public void ABreakerOnANorthAmericanCircuitMeetsUl489(BreakerEdge edge)
    {
        var curve = BreakerCurve.Of(120, edge);
        Assert.Equal(double.PositiveInfinity, curve.SecondsToTrip(0, 1.00));
        Assert.InRange(curve.SecondsToTrip(0, 1.35), 0, Hour);
        Assert.InRange(curve.SecondsToTrip(0, 2.00), 0, 120.0001);
    }

    [Theory]
    [MemberData(nameof(Edges))]
    // IEC 60898-1: no trip at 1.13 In, trip at 1.45 In, within 1 h (se.com FAQ FA369327); at 2.55 In 1 to 60 s, up to 32 A (from
    // memory).
    public void ABreakerOnAEuropeanCircuitMeetsIec60898(BreakerEdge edge)
    {
        var curve = BreakerCurve.Of(230, edge);
        Assert.Equal(double.PositiveInfinity, curve.SecondsToTrip(0, 1.13));
        Assert.InRange(curve.SecondsToTrip(0, 1.45), 0, Hour);
        Assert.InRange(curve.SecondsToTrip(0, 2.55), 0.9999, 60.0001);
    }

    [Fact]
    public void TypeCTripsMagneticallyBetweenFiveAndTenTimes()
    {
        // IEC 60898-1 type C: 5 to 10 In (filipinoengineer.com 2024/01).
        Assert.True(BreakerCurve.Of(230, BreakerEdge.Fast).SecondsToTrip(0, 4.99) > 0);
        Assert.Equal(0, BreakerCurve.Of(230, BreakerEdge.Fast).SecondsToTrip(0, 5));
        Assert.True(BreakerCurve.Of(230, BreakerEdge.Slow).SecondsToTrip(0, 9.99) > 0);
        Assert.Equal(0, BreakerCurve.Of(230, BreakerEdge.Slow).SecondsToTrip(0, 10));
    }

    [Fact]
    public void TheFastEdgeTripsBeforeTheSlowOne()
    {
        for (var multiple = 1.4; multiple < 5; multiple += 0.1)
        {
            Assert.True(BreakerCurve.Of(120, BreakerEdge.Fast).SecondsToTrip(0, multiple)
                < BreakerCurve.Of(120, BreakerEdge.Slow).SecondsToTrip(0, multiple));
        }
    }

    [Fact]
    public void AWarmBreakerTripsSoonerAndHeatAddsUpAcrossSteps()
    {
        var curve = BreakerCurve.Of(120, BreakerEdge.Slow);
        var warm = curve.HeatAfter(0, 1.0, 600);
        Assert.True(curve.SecondsToTrip(warm, 2) < curve.SecondsToTrip(0, 2));
        Assert.Equal(curve.HeatAfter(0, 1.3, 100), curve.HeatAfter(curve.HeatAfter(0, 1.3, 40), 1.3, 60), 1e-12);
    }
}
