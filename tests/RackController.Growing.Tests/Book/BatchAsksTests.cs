using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Growing.Tests;

public sealed class BatchAsksTests
{
    private static readonly Site site = Sites.OneRack(2).WithRack(rack => rack with
    {
        Tiers = [.. rack.Tiers.Select(tier => tier with { PpfdUmolPerM2S = 200 })],
    });

    [Fact]
    public void WhatTheGrowerWroteStaysWhereItSuits()
    {
        // 16 h of 200 umol/m2/s are 11.52 mol/m2/d.
        var asks = Of(Standing("P", "north/tier 1", SomeCrop.Stage(8, 12) with { Floods = [new(null, new(2, 4))] }));

        Assert.True(asks.Asked.IsNone);
        Assert.Empty(asks.Disagreements);
    }

    [Fact]
    public void ALampIsSetToTheNearestQuarterOfAnHourThatGivesTheDailyLight()
    {
        // At most 10 mol/m2/d: 13.89 h of 200 umol/m2/s.
        var asks = Of(Standing("P", "north/tier 1", SomeCrop.Stage(8, 10) with { Floods = [new(null, new(2, 4))] }));

        Assert.Equal(Duration.FromMinutes(13 * 60 + 45), asks.Asked.LengthOn(1));
        Assert.Equal(["north/tier 1: 13 h 45 min of light instead of 16 h of light"], asks.Changes.AsEnumerable());
    }

    [Fact]
    public void BatchesOnOneTierShareItsLampAndThoseOfARackItsFloods()
    {
        var asks = Of(
            Standing("P", "north/tier 1", Stage(12, 15, 1, 5)), Standing("Q", "north/tier 1", Stage(14, 18, 1, 2)),
            Standing("R", "north/tier 2", Stage(12, 18, 1, 3)));

        Assert.Equal([new TierHours(1, Duration.FromHours(15))], asks.Asked.Tiers.AsEnumerable());
        Assert.Equal(2, asks.Asked.FloodsPerDay);
    }

    [Fact]
    public void BatchesThatDoNotAgreeAreNamedAndNothingIsChangedForThem()
    {
        var asks = Of(
            Standing("P", "north/tier 1", Stage(12, 13, 1, 2)), Standing("Q", "north/tier 1", Stage(15, 18, 4, 5)));

        Assert.True(asks.Asked.IsNone);
        Assert.Equal(
            [
                "north/tier 1: P (pea, 12 to 13 h) and Q (pea, 15 to 18 h) do not agree on hours of light",
                "north: P (pea, 1 to 2) and Q (pea, 4 to 5) do not agree on floods a day",
            ],
            asks.Disagreements.AsEnumerable());
    }

    [Fact]
    public void ALampThatIsTooWeakIsToldAndStaysOnForAsLongAsTheStageBears()
    {
        var asks = Of(Standing("P", "north/tier 1", SomeCrop.Stage(20, 30) with { Floods = [new(null, new(2, 4))] }));

        Assert.Contains("cannot have its daily light from 200 umol/m2/s", Assert.Single(asks.Disagreements), StringComparison.Ordinal);
        Assert.True(asks.Asked.IsNone);
    }

    [Fact]
    public void ATierThatWasEmptiedIsDarkAndOneThatTheBookNeverKnewIsAsItWasWritten()
    {
        BookEntry[] emptied =
        [
            .. Standing("P", "north/tier 1", Stage(12, 18, 1, 5)), SomeBook.Harvested("P", 8, 4),
        ];

        var asks = Of(emptied);
        Assert.Equal([new TierHours(1, Duration.Zero)], asks.Asked.Tiers.AsEnumerable());
        Assert.Null(asks.Asked.FloodsPerDay);

        var both = Of([.. emptied, .. Standing("Q", "north/tier 2", Stage(12, 18, 1, 5)), SomeBook.Harvested("Q", 8, 4)]);
        Assert.Equal(0, both.Asked.FloodsPerDay);
    }

    // Whatever stands there: hours and floods that are asked for suit all of it, or somebody is named.
    [Fact]
    public void WhatIsAskedForSuitsAllThatStandsThere() =>
        Gen.Select(Gen.Int[1, 2], Gen.Int[0, 18], Gen.Int[0, 6], Gen.Int[1, 6], Gen.Int[0, 3]).Array[1, 4].Sample(drawn =>
        {
            var entries = drawn.SelectMany((one, index) => Standing(
                $"L{index}", $"north/tier {one.Item1}",
                Stage(one.Item2, one.Item2 + one.Item3, one.Item4, one.Item4 + one.Item5), trays: 1)).ToArray();
            var asks = Of(entries);
            var standing = SomeBook.Of(entries).StandingOn(SomeBook.May.PlusDays(9), byDate: false);
            return asks.Disagreements.Length > 0 || standing.All(one =>
            {
                var tier = one.Tier[^1] - '0';
                var hours = (asks.Asked.LengthOn(tier) ?? site.Racks[0].Schedule.Lights[tier - 1]!.Length).TotalHours;
                return one.Needs.PhotoperiodH.Holds(hours) && one.Needs.FloodsIn("coir").Holds(asks.Asked.FloodsPerDay ?? 3);
            });
        }, iter: 5000);

    private static LitStage Stage(double leastH, double mostH, int leastFloods, int mostFloods) => SomeCrop.Stage(0, 100) with
    {
        PhotoperiodH = new Bounds(leastH, mostH),
        Floods = [new MediaFloods(null, new WholeBounds(leastFloods, mostFloods))],
    };

    private static BookEntry[] Standing(string lot, string tier, LitStage stage, int trays = 4) =>
        [SomeBook.TakenUp(lot, trays, stage), SomeBook.Sown(lot), SomeBook.Moved(lot, 3, new StandsOn(tier, trays))];

    private static RackAsks Of(params ReadOnlySpan<BookEntry[]> batches) =>
        Of([.. batches.ToArray().SelectMany(entries => entries)]);

    private static RackAsks Of(BookEntry[] entries) =>
        Assert.Single(BatchAsks.Of(site, SomeBook.Of(entries), SomeBook.May.PlusDays(9)));
}
