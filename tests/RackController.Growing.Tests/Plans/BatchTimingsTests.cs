using NodaTime;

namespace RackController.Growing.Tests;

public sealed class BatchTimingsTests
{
    private static readonly LocalDate monday = new(2026, 3, 2);

    private static readonly WorkDays work = new(
        [IsoDayOfWeek.Monday, IsoDayOfWeek.Tuesday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Thursday, IsoDayOfWeek.Friday]);

    [Fact]
    public void NobodyIsNeededOnADayWithoutWork()
    {
        var timings = BatchTimings.Of(SomeCrop.Batch(SomeCrop.Soaked(8), monday.PlusDays(16)), work, monday);
        Assert.NotEmpty(timings);
        Assert.All(timings, timing => Assert.All(
            (LocalDate[])[timing.Sow.PlusDays(-1), timing.Sow, timing.Lit, timing.Harvest], day => Assert.True(work.Has(day), $"{day}")));
    }

    // Soaked seed that is sown on a Monday lies in water on a Sunday evening.
    [Fact]
    public void SoakedSeedIsNotSownAfterADayOff()
    {
        var due = monday.PlusDays(16);
        Assert.DoesNotContain(
            BatchTimings.Of(SomeCrop.Batch(SomeCrop.Soaked(8), due), work, monday), timing => timing.Sow.DayOfWeek == IsoDayOfWeek.Monday);
        Assert.Contains(
            BatchTimings.Of(SomeCrop.Batch(SomeCrop.Soaked(0), due), work, monday), timing => timing.Sow.DayOfWeek == IsoDayOfWeek.Monday);
    }

    // Two days in the dark and four in the light are the least that this crop takes.
    [Fact]
    public void NothingIsSownBeforeThePlanBegins()
    {
        Assert.Empty(BatchTimings.Of(SomeCrop.Batch(SomeCrop.Soaked(0), monday.PlusDays(5)), work, monday));
        Assert.NotEmpty(BatchTimings.Of(SomeCrop.Batch(SomeCrop.Soaked(0), monday.PlusDays(7)), work, monday));
    }

    [Fact]
    public void WhatGrowsAlreadyKeepsTheDaysThatItHasHad()
    {
        var known = new UnderWay(monday.PlusDays(-4), monday.PlusDays(-1), null, 1);
        var batch = SomeCrop.Batch(SomeCrop.Soaked(0), monday.PlusDays(4)) with { UnderWay = known };
        var timings = BatchTimings.Of(batch, work, monday);
        Assert.NotEmpty(timings);
        Assert.All(timings, timing => Assert.Equal((known.Sown, known.Lit), (timing.Sow, timing.Lit)));
    }
}
