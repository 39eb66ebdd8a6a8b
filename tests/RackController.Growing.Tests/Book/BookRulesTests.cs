namespace RackController.Growing.Tests;

public sealed class BookRulesTests
{
    private static readonly GrowingBook book = SomeBook.Of(
        SomeBook.TakenUp("P"), SomeBook.Sown("P", 2), SomeBook.TakenUp("Q"), SomeBook.Harvested("P", 9, 1), SomeBook.Struck(4));

    public static readonly TheoryData<BookEntry, string?> Entries = new()
    {
        { SomeBook.TakenUp("R", 4, null, SomeBook.Step(3, 4)), null },
        { SomeBook.TakenUp("P"), "There is a batch P already." },
        { SomeBook.TakenUp("R", 4, null, SomeBook.Step(3, 4, "south/tier 9")), "There is no tier south/tier 9." },
        { SomeBook.TakenUp("R", 4, null, SomeBook.Step(3, 5)), "north/tier 1 has room for 4 insert trays." },
        { SomeBook.Sown("Q"), null },
        { SomeBook.Sown("P"), "P was sown on Sun 3 May already." },
        { SomeBook.Sown("Q", 60), "Tue 30 Jun is still to come." },
        { SomeBook.Sown("Z"), "There is no batch Z." },
        { SomeBook.Moved("Q", 5, new StandsOn("north/tier 1", 4)), "Q is not sown yet." },
        { SomeBook.Moved("P", 1, new StandsOn("north/tier 1", 4)), "P was sown on Sun 3 May, after that." },
        { SomeBook.Moved("P", 5, new StandsOn("north/tier 1", 4)), null },
        { SomeBook.Moved("P", 5, new StandsOn("north/tier 1", 3)), "P has 4 trays, and 3 of them are on tiers then" },
        { SomeBook.Moved("P", 5), "Say on which tier its trays stand." },
        { SomeBook.Moved("P", 5, new StandsOn("north/tier 1", 2), new StandsOn("north/tier 1", 2)), "north/tier 1 stands there twice." },
        { SomeBook.Moved("P", 5, new StandsOn("north/tier 1", 4)) with { Stage = 1 }, "P has 1 stages in the light." },
        { SomeBook.Harvested("P", 8, 4), null },
        { SomeBook.Harvested("P", 8, 5), "P has 4 trays left." },
        { SomeBook.Harvested("P", 8, 2) with { From = [new("north/tier 1", 1)] }, "Say from which tiers all 2 trays are." },
        { SomeBook.Sown("Q", -1000), "Saturday 5 August 2023 is too long ago" },
        { SomeBook.TakenUp("R\nS"), "A lot code has 1 to 60 characters on one line." },
        { SomeBook.TakenUp("R", 4, SomeCrop.Stage(8, 1e9)), "What pea needs is not possible" },
        { SomeBook.TakenUp("R", 4, SomeCrop.Stage(8, 12) with { Floods = [] }), "What pea needs is not possible" },
        { SomeBook.TakenUp("R") with { Sow = new(9999, 12, 31), Harvest = new(9999, 12, 31) }, "Friday 31 December 9999 is too far away" },
        { SomeBook.TakenUp("R") with { Harvest = new(9999, 12, 31) }, "Friday 31 December 9999 is too far away to grow until." },
        {
            SomeBook.TakenUp("R", 4, null, new CourseStep(new(9999, 12, 31), 0, [])),
            "Friday 31 December 9999 is too far away to grow until."
        },
        {
            new BatchReplanned(default, "Ada", "P", [], new(9999, 12, 31), ""),
            "Friday 31 December 9999 is too far away to grow until."
        },
        { SomeBook.Harvested("P", 8, 1) with { WeightG = 90_000 }, "That weight cannot come from so few trays" },
        { SomeBook.Discarded("P", 8, 0), "P has 4 trays left." },
        { SomeBook.Struck(3), null },
        { SomeBook.Struck(1), "Entry 2 came of it: strike that one first." },
        { SomeBook.Struck(4), "Entry 4 is struck already." },
        { SomeBook.Struck(5), "What was struck stays struck" },
        { SomeBook.Struck(77), "There is no entry 77." },
    };

    [Theory]
    [MemberData(nameof(Entries))]
    public void WhatCannotBeIsRefusedWithItsReason(BookEntry entry, string? reason)
    {
        var wrong = BookRules.WhatIsWrong(book, entry, Places, SomeBook.May.PlusDays(20));

        Assert.Equal(reason is null, wrong is null);
        Assert.StartsWith(reason ?? "", wrong ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public void ATierHasRoomForSoManyTraysWhoeverTheyAreOf()
    {
        var full = SomeBook.Of(
            SomeBook.TakenUp("P", 3), SomeBook.Sown("P"), SomeBook.Moved("P", 3, new StandsOn("north/tier 1", 3)), SomeBook.TakenUp("Q", 2),
            SomeBook.Sown("Q"));

        Assert.Equal(
            "north/tier 1 has room for 4 insert trays, and 3 stand there already: P. Put down first where those went.",
            BookRules.WhatIsWrong(full, SomeBook.Moved("Q", 4, new StandsOn("north/tier 1", 2)), Places, SomeBook.May.PlusDays(5)));
        Assert.Null(BookRules.WhatIsWrong(full, SomeBook.Moved("P", 4, new StandsOn("north/tier 1", 3)), Places, SomeBook.May.PlusDays(5)));
    }

    [Theory]
    [InlineData("  even \n2027-01-01 INF Load north/pump: on\t", "even  2027-01-01 INF Load north/pump: on")]
    [InlineData("a\u202eb\u2028c", "a b c")]
    [InlineData(null, "")]
    public void ATextIsPutDownOnOneLine(string? text, string cut) => Assert.Equal(cut, BookRules.Cut(text));

    private static int? Places(string tier) => tier.StartsWith("north/", StringComparison.Ordinal) ? 4 : null;
}
