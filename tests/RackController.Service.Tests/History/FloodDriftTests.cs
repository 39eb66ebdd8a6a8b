using NodaTime;
using RackController.Model;

namespace RackController.Service.Tests;

public sealed class FloodDriftTests
{
    // By hand: before, 100 s, so the median is 100. Lately 120 to 138 s in steps of 2: the median is (128 + 130) / 2 = 129 s, 29 % more.
    [Fact]
    public void AFillThatBecameSlowerIsToldInPercent()
    {
        var floods = Fills([.. Enumerable.Repeat(100.0, 10), .. Enumerable.Range(0, 10).Select(at => 120.0 + 2 * at)]);

        var drift = Assert.Single(FloodDrift.In(floods));

        Assert.Equal((DriftOf.TierFill, 4, 100.0, 129.0), (drift.Of, drift.Tier, drift.Before, drift.Lately));
        Assert.Equal(29, drift.Percent, 9);
    }

    [Theory]
    [InlineData(119.9, false)]
    [InlineData(120, true)]
    [InlineData(80.1, false)]
    [InlineData(80, true)]
    public void AFifthMoreOrLessIsToldAndLessIsNot(double lately, bool isTold) =>
        Assert.Equal(isTold, FloodDrift.In(Fills([.. Enumerable.Repeat(100.0, 10), .. Enumerable.Repeat(lately, 10)])).Length == 1);

    [Theory]
    [InlineData(9, 10)]
    [InlineData(10, 9)]
    public void FewerThanTenOnEitherSideTellNothing(int before, int lately) =>
        Assert.Empty(FloodDrift.In(Fills([.. Enumerable.Repeat(100.0, before), .. Enumerable.Repeat(200.0, lately)])));

    [Fact]
    public void OneOddFloodIsNoDrift() =>
        Assert.Empty(FloodDrift.In(Fills([.. Enumerable.Repeat(100.0, 19), 900])));

    // With fewer tiers the others fill faster, which is no drift of theirs.
    [Fact]
    public void FloodsWithOtherTiersAtRestAreNotComparedWithEachOther()
    {
        var before = Fills(Enumerable.Repeat(100.0, 10));
        var lately = Fills(Enumerable.Repeat(60.0, 10), Happenings.Noon + Duration.FromDays(5))
            .ConvertAll(flood => flood with { Resting = TierSet.Of([1, 2]) });

        Assert.Empty(FloodDrift.In([.. before, .. lately]));
        Assert.Single(FloodDrift.In([.. before.Select(flood => flood with { Resting = TierSet.Of([1, 2]) }), .. lately]));
    }

    [Fact]
    public void WhatIsOlderThanThirtyDaysBeforeIsNotCompared()
    {
        var old = Fills(Enumerable.Repeat(50.0, 15), Happenings.Noon - Duration.FromDays(60));

        Assert.Empty(FloodDrift.In([.. old, .. Fills([.. Enumerable.Repeat(100.0, 20)])]));
        Assert.Empty(FloodDrift.In([.. old, .. Fills([.. Enumerable.Repeat(100.0, 10)])]));
    }

    private static List<FloodRecord> Fills(IEnumerable<double> seconds, Instant? since = null) =>
    [
        .. seconds.Select((fill, at) => new FloodRecord(
            (since ?? Happenings.Noon) + Duration.FromHours(8) * at, "", null, null, null, null,
            [new TierFlood(4, Duration.FromSeconds(fill), null)])),
    ];
}
