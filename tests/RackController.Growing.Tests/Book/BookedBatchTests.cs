using CsCheck;
using NodaTime;

namespace RackController.Growing.Tests;

public sealed class BookedBatchTests
{
    [Fact]
    public void ABatchThatWaitsForATapGoesIntoTheLightWhenSomebodySaysSo()
    {
        var batch = BatchOf(
            SomeBook.TakenUp("P", 4, null, SomeBook.Step(3, 4)), SomeBook.Sown("P"),
            SomeBook.Moved("P", 5, new StandsOn("north/tier 2", 4)));

        Assert.Equal(BatchPhase.InTheDark, batch.PhaseOn(SomeBook.May.PlusDays(4), byDate: false));
        Assert.Equal(BatchPhase.InTheLight, batch.PhaseOn(SomeBook.May.PlusDays(5), byDate: false));
        Assert.Equal("north/tier 2", Assert.Single(batch.PlacesOn(SomeBook.May.PlusDays(6), byDate: false)!.Places).Tier);
    }

    [Fact]
    public void ABatchThatGoesByDateMovesOnTheDayPlannedUntilSomebodySaysOtherwise()
    {
        var batch = BatchOf(
            SomeBook.TakenUp("P", 4, null, SomeBook.Step(3, 4), SomeBook.Step(6, 4, "north/tier 2")), SomeBook.Sown("P"),
            SomeBook.Moved("P", 4, new StandsOn("north/tier 3", 4)));

        Assert.Null(batch.PlacesOn(SomeBook.May.PlusDays(2), byDate: true));
        Assert.Equal(
            ["north/tier 1", "north/tier 3", "north/tier 3", "north/tier 2"],
            Enumerable.Range(3, 4).Select(day => batch.PlacesOn(SomeBook.May.PlusDays(day), byDate: true)!.Places[0].Tier));
    }

    [Fact]
    public void WhatIsNotSownIsNotMovedByAnyDate()
    {
        var batch = BatchOf(SomeBook.TakenUp("P", 4, null, SomeBook.Step(3, 4)));

        Assert.Equal(BatchPhase.Planned, batch.PhaseOn(SomeBook.May.PlusDays(5), byDate: true));
        Assert.Null(batch.PlacesOn(SomeBook.May.PlusDays(5), byDate: true));
    }

    [Fact]
    public void AStepWithoutAPlaceIsDueUntilSomebodySaysWhereItStands()
    {
        var begun = SomeBook.TakenUp("P", 4, null, new CourseStep(SomeBook.May.PlusDays(3), 0, []));
        var inTheDark = BatchOf(begun, SomeBook.Sown("P"));
        var moved = BatchOf(begun, SomeBook.Sown("P"), SomeBook.Moved("P", 4, new StandsOn("north/tier 1", 4)));

        foreach (var byDate in (bool[])[true, false])
        {
            Assert.Equal(BatchPhase.InTheDark, inTheDark.PhaseOn(SomeBook.May.PlusDays(5), byDate));
            Assert.Equal(SomeBook.May.PlusDays(3), inTheDark.NextStep(SomeBook.May.PlusDays(5), byDate)?.Day);
            Assert.Null(moved.NextStep(SomeBook.May.PlusDays(5), byDate));
        }
    }

    [Fact]
    public void ABatchIsGoneWithTheLastOfItsTrays()
    {
        var batch = BatchOf(
            SomeBook.TakenUp("P", 4), SomeBook.Sown("P"), SomeBook.Moved("P", 3, new StandsOn("north/tier 1", 4)),
            SomeBook.Harvested("P", 8, 3), SomeBook.Discarded("P", 9, 1));

        Assert.Equal(1, batch.PlacesOn(SomeBook.May.PlusDays(8), byDate: false)!.Places.Sum(place => place.Trays));
        Assert.Equal(BatchPhase.Gone, batch.PhaseOn(SomeBook.May.PlusDays(9), byDate: false));
        Assert.Equal(SomeBook.May.PlusDays(9), batch.GoneOn);
        Assert.Equal(300, batch.HarvestedG);
    }

    [Fact]
    public void TraysAreTakenFromWhereTheyStood()
    {
        var batch = BatchOf(
            SomeBook.TakenUp("P", 4), SomeBook.Sown("P"),
            SomeBook.Moved("P", 3, new StandsOn("north/tier 1", 3), new StandsOn("north/tier 2", 1)),
            SomeBook.Harvested("P", 8, 3) with { From = [new("north/tier 1", 3)] });

        Assert.Equal(
            [new StandsOn("north/tier 2", 1)], batch.PlacesOn(SomeBook.May.PlusDays(8), byDate: false)!.Places.AsEnumerable());
    }

    [Fact]
    public void WhatIsSownLateGrowsLate()
    {
        var batch = BatchOf(SomeBook.TakenUp("P", 4, null, SomeBook.Step(3, 4)), SomeBook.Sown("P", 5));

        Assert.Equal(BatchPhase.InTheDark, batch.PhaseOn(SomeBook.May.PlusDays(7), byDate: true));
        Assert.Equal(BatchPhase.InTheLight, batch.PhaseOn(SomeBook.May.PlusDays(8), byDate: true));
        Assert.Equal(SomeBook.May.PlusDays(14), batch.Start.Harvest);
    }

    [Fact]
    public void ALaterPlanSetsWhereItStandsAndWhenItIsHarvested()
    {
        var batch = BatchOf(
            SomeBook.TakenUp("P", 4, null, SomeBook.Step(3, 4)), SomeBook.Sown("P"),
            new BatchReplanned(default, "Ada", "P", [SomeBook.Step(4, 4, "north/tier 2")], SomeBook.May.PlusDays(11), "the inn"));

        Assert.Equal("north/tier 2", batch.PlacesOn(SomeBook.May.PlusDays(4), byDate: true)!.Places[0].Tier);
        Assert.Equal((SomeBook.May.PlusDays(11), "the inn"), (batch.Start.Harvest, batch.Start.For));
    }

    [Fact]
    public void AMoveADayEarlyIsNotAskedForAgain()
    {
        var batch = BatchOf(
            SomeBook.TakenUp("P", 4, null, SomeBook.Step(3, 4)), SomeBook.Sown("P"),
            SomeBook.Moved("P", 2, new StandsOn("north/tier 1", 4)));

        Assert.Null(batch.NextStep(SomeBook.May.PlusDays(2), byDate: false));
        Assert.Null(batch.NextStep(SomeBook.May.PlusDays(2), byDate: true));
    }

    [Fact]
    public void AnEntryThatWasStruckCountsForNothingAndStaysLegible()
    {
        var book = SomeBook.Of(
            SomeBook.TakenUp("P", 4), SomeBook.Sown("P"), SomeBook.Harvested("P", 8, 4), SomeBook.Struck(3));

        Assert.Equal(4, Assert.Single(book.Batches).TraysLeft);
        Assert.Equal(3, book.Of("P").Length);
        Assert.Equal("wrong tray", book.Struck[3].Why);
    }

    // Whatever people put down that the rules allow: never more trays on tiers than there are, none before sowing, none after the end.
    [Fact]
    public void TraysAreNeverMoreThanThereAre() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 12], Gen.Int[1, 4], Gen.Int[1, 3]).Array[1, 12].Sample(steps =>
        {
            var (entries, book) = (new List<BookEntry> { SomeBook.TakenUp("P", 4, null, SomeBook.Step(3, 4)) }, GrowingBook.Empty);
            foreach (var (kind, day, trays, tier) in steps)
            {
                book = SomeBook.Of([.. entries]);
                BookEntry entry = kind switch
                {
                    0 => SomeBook.Sown("P", day),
                    1 => SomeBook.Moved("P", day, new StandsOn($"north/tier {tier}", book.Batches[0].TraysLeft)),
                    2 => SomeBook.Harvested("P", day, trays),
                    _ => SomeBook.Discarded("P", day, trays),
                };
                if (BookRules.WhatIsWrong(book, entry, _ => 4, SomeBook.May.PlusDays(20)) is null)
                {
                    entries.Add(entry);
                }
            }

            var batch = SomeBook.Of([.. entries]).Batches[0];
            return batch.TraysLeft is >= 0 and <= 4 && Enumerable.Range(-1, 22).All(day =>
                IsSound(batch, SomeBook.May.PlusDays(day), byDate: true) && IsSound(batch, SomeBook.May.PlusDays(day), byDate: false));
        }, iter: 5000);

    private static bool IsSound(BookedBatch batch, LocalDate day, bool byDate) => batch.PlacesOn(day, byDate) is not { } there
        || (there.Places.Sum(place => place.Trays) is > 0 and <= 4 && batch.Sown!.Day <= day);

    private static BookedBatch BatchOf(params ReadOnlySpan<BookEntry> entries) => Assert.Single(SomeBook.Of(entries).Batches);
}
