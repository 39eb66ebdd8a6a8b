using NodaTime;
using RackController.Growing;

namespace RackController.PlanFiles.Tests;

public sealed class BookGrowingTests
{
    private static readonly Instant at = Instant.FromUtc(2026, 3, 1, 8, 0);
    private static readonly LocalDate today = Orders.Today;

    [Fact]
    public void WhatGrowsByTheBookIsPlannedForAndKeepsItsLot()
    {
        var request = Read(
            TakenUp("PEA-X", 4), new BatchSown(at, "Ada", "PEA-X", today.PlusDays(-4), ""),
            new BatchMoved(at, "Ada", "PEA-X", today.PlusDays(-1), 0, [new("north/tier 1", 3), new("north/tier 2", 1)]),
            TakenUp("PEA-Y", 2), new BatchSown(at, "Ada", "PEA-Y", today.PlusDays(-1), ""), TakenUp("PEA-Z", 2)).Season!.Request;

        Assert.Equal(
            [("PEA-X", 3, "north/tier 1"), ("PEA-X", 1, "north/tier 2"), ("PEA-Y", 2, null)],
            request.Growing.Select(batch => (batch.UnderWay!.Lot, batch.Trays, batch.UnderWay.Tier)));
        Assert.Equal(today.PlusDays(-1), request.Growing[0].UnderWay!.Lit);
        Assert.Null(request.Growing[2].UnderWay!.Lit);
    }

    [Fact]
    public void WhatIsPastItsTimeIsLeftOutOfThePlanAndNamed()
    {
        var reading = Read(TakenUp("PEA-O", 4), new BatchSown(at, "Ada", "PEA-O", today.PlusDays(-60), ""));

        Assert.Empty(reading.Season!.Request.Growing);
        Assert.StartsWith("PEA-O of the growing book: pea sown on", Assert.Single(reading.Complaints).What, StringComparison.Ordinal);
    }

    [Fact]
    public void ACropThatNobodyKnowsAnyMoreIsNamed() => Assert.Contains(
        "there is no crop `moss`",
        Assert.Single(Read(TakenUp("MOS-1", 1) with { Crop = "moss" }, new BatchSown(at, "Ada", "MOS-1", today, "")).Complaints).What,
        StringComparison.Ordinal);

    [Fact]
    public void NewLotsTakeNoCodeThatGrowsAlready()
    {
        var growing = Orders.Plan().Batches[0];
        var known = growing.Batch with { UnderWay = new UnderWay(growing.Timing.Sow, null, null, 1) { Lot = "PEA-260305" } };
        var timing = growing.Timing with { Sow = new LocalDate(2026, 3, 5) };

        Assert.Equal(
            ["PEA-260305-2", "PEA-260305", "PEA-260305-3"],
            LotCodes.Of([(growing.Batch, timing), (known, growing.Timing), (growing.Batch, timing)]).AsEnumerable());
    }

    private static BatchTakenUp TakenUp(string lot, int trays) => new(
        at, "Ada", lot, "pea", trays, today.PlusDays(-4), Orders.Plan().Batches[0].Batch.Crop.LitStages, [], today.PlusDays(9), "");

    private static OrdersReading Read(params BookEntry[] entries) =>
        Orders.Read(
            "dated: [{ customer: inn, crop: dill, weight: 50 g, on: 2026-04-10 }]",
            book: GrowingBook.Of([.. entries.Select((entry, index) => new WrittenEntry(index + 1, entry))]));
}
