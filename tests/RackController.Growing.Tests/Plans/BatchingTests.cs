using NodaTime;

namespace RackController.Growing.Tests;

public sealed class BatchingTests
{
    private static readonly LocalDate due = new(2026, 3, 20);
    private static readonly Crop crop = SomeCrop.Soaked(0);

    // 250 g and a tenth more at 100 g a tray are 2.75 trays.
    [Fact]
    public void OrdersOfOneDayAreGrownTogetherAndRoundedUpOnce()
    {
        var batch = Batching.Of([Cut(120), Cut(130)], [], marginPercent: 10).Single();
        Assert.Equal(3, batch.Trays);
        Assert.Equal(2, batch.Orders.Length);
    }

    [Fact]
    public void AWholeNumberOfTraysIsNotRoundedUp() => Assert.Equal(3, Batching.Of([Cut(300)], [], 0).Single().Trays);

    [Fact]
    public void TraysThatLeaveAliveAreABatchOfTheirOwn() =>
        Assert.Equal(2, Batching.Of([Cut(100), new Order("inn", crop, new LiveTrays(1), due, 2)], [], 0).Length);

    [Fact]
    public void WhatGrowsAlreadyIsTakenFirst()
    {
        var growing = SomeCrop.Batch(crop, due) with { UnderWay = new UnderWay(due.PlusDays(-7), due.PlusDays(-5), null, 1) };
        var batches = Batching.Of([Cut(300)], [growing], 0);
        Assert.Equal([2, 1], batches.Select(batch => batch.Trays));
        Assert.Equal([true, false], batches.Select(batch => batch.UnderWay is not null));
    }

    [Fact]
    public void WhatIsPastItsTimeByThenIsForNobody()
    {
        var growing = SomeCrop.Batch(crop, due) with { UnderWay = new UnderWay(due.PlusDays(-30), due.PlusDays(-28), null, 1) };
        Assert.Equal([0], Batching.Of([Cut(100)], [growing], 0).Where(batch => batch.UnderWay is not null)
            .Select(batch => batch.Orders.Length));
    }

    private static Order Cut(double weightG) => new("inn", crop, new CutWeight(weightG), due, 1);
}
