using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class UpkeepDeskTests : IDisposable
{
    private static readonly Site site = Sites.OneRack();
    private static readonly Rack rack = site.Racks[0];
    private static readonly Moment now = new(MonotonicTime.Zero, Happenings.Noon, WallTrusted: true);

    private readonly TemporaryFolder folder = new();

    private UpkeepDesk Desk => new(site, new BookDesk(folder.File("book.db"), site));

    public void Dispose() => folder.Dispose();

    [Fact]
    public void WhatIsDoneStandsInTheBook()
    {
        Assert.Null(Desk.Done(rack, UpkeepWork.Flush, " with citric acid ", "Ada", now));

        var done = Assert.Single(Desk.Book.Upkeep);
        Assert.Equal((now.Wall, "Ada", "flush", "north", "with citric acid"), (done.At, done.By, done.Work, done.Rack, done.Note));
        Assert.Equal(now.Wall, Desk.LastDone(rack, UpkeepWork.Flush));
        Assert.Null(Desk.LastDone(rack, UpkeepWork.Screen));
    }

    [Fact]
    public void WhatIsStruckStaysLegibleAndCountsNoMore()
    {
        Desk.Done(rack, UpkeepWork.Flush, "", "Ada", now);
        Desk.Done(rack, UpkeepWork.Flush, "", "Ben", now with { Wall = now.Wall + Duration.FromDays(1) });

        Assert.Null(Desk.Strike(2, "the wrong rack", "Ben", now.Wall));
        Assert.Equal(now.Wall, Desk.LastDone(rack, UpkeepWork.Flush));
        Assert.Equal(3, Desk.Book.Entries.Length);
    }

    [Fact]
    public void OnlyAWorkThatStandsThereIsStruckAndWithAReason()
    {
        Desk.Done(rack, UpkeepWork.Flush, "", "Ada", now);

        Assert.Contains("no work of upkeep with number 2", Desk.Strike(2, "a slip", "Ben", now.Wall), StringComparison.Ordinal);
        Assert.NotNull(Desk.Strike(1, " ", "Ben", now.Wall));
        Assert.NotNull(Desk.Strike(1, new string('x', 501), "Ben", now.Wall));
        Assert.Null(Desk.Strike(1, "a slip", "Ben", now.Wall));
        Assert.NotNull(Desk.Strike(1, "a slip", "Ben", now.Wall));
    }

    [Theory]
    [InlineData("norht", "screen", "there is no rack `norht`: did you mean `north`?")]
    [InlineData("north", "scren", "north has no work `scren`: did you mean `screen`?")]
    public void WhatIsNotThereIsSaidWithWhatWasMeant(string name, string work, string complaint)
    {
        Assert.Null(Desk.Find(name, work, out var said));
        Assert.Equal(complaint, said);
    }

    [Fact]
    public void UnderAClockThatIsNotTrustedNothingIsPutDown()
    {
        Assert.NotNull(Desk.Done(rack, UpkeepWork.Flush, "", "Ada", now with { WallTrusted = false }));
        Assert.NotNull(Desk.Done(rack, UpkeepWork.Flush, new string('x', 501), "Ada", now));
        Assert.Empty(Desk.Book.Entries);
    }
}
