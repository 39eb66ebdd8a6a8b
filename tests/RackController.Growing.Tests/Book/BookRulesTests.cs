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
        { SomeBook.Harvested("P", 8, 1) with { WeightG = 90_000 }, "That weight cannot come from so few trays" },
        { SomeBook.Discarded("P", 8, 0), "P has 4 trays left." },
        { SomeBook.Struck(1), null },
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

    private static int? Places(string tier) => tier.StartsWith("north/", StringComparison.Ordinal) ? 4 : null;
}
