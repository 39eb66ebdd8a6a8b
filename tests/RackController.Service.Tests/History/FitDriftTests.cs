using System.Collections.Immutable;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class FitDriftTests
{
    [Fact]
    public void FloodsAsForetoldAreNoDrift() => Assert.Empty(In(FittedSite.Floods(12, [1, 1], [1, 1])));

    [Theory]
    [InlineData(1.14, false)]
    [InlineData(1.16, true)]
    [InlineData(0.86, false)]
    [InlineData(0.84, true)]
    public void FifteenPercentMoreOrLessThanForetoldIsToldOfItsTier(double factor, bool isTold)
    {
        var drifts = In(FittedSite.Floods(10, [1, 1], [1, factor]));

        Assert.Equal(isTold ? [(DriftOf.TierDrain, (int?)2)] : [], drifts.Select(drift => (drift.Of, drift.Tier)));
        Assert.All(drifts, drift => Assert.Equal(FittedSite.Rack.Measured!.On, drift.FittedOn));
    }

    [Fact]
    public void WhereEveryTierFillsSlowerItIsOfTheWholeRack()
    {
        var drift = Assert.Single(In(FittedSite.Floods(10, [1.3, 1.4], [1, 1])));

        Assert.Equal((DriftOf.Fill, null), (drift.Of, drift.Tier));
        Assert.InRange(drift.Percent, 30, 40);
    }

    [Fact]
    public void NineFloodsOrARackWithoutAFitTellNothing()
    {
        Assert.Empty(In(FittedSite.Floods(9, [2, 2], [2, 2])));
        var site = FittedSite.Site.WithRack(rack => rack with { Measured = null });
        Assert.Empty(FitDrift.In(site, site.Racks[0], FittedSite.Floods(10, [2, 2], [2, 2])));
    }

    private static ImmutableArray<FloodDrift> In(IEnumerable<FloodRecord> floods) => FitDrift.In(FittedSite.Site, FittedSite.Rack, floods);
}
