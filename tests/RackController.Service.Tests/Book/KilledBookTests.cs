using RackController.Growing;

namespace RackController.Service.Tests;

public sealed class KilledBookTests
{
    [Fact]
    public async Task NothingThatWasPutDownIsLostToAKillAndTheBookGoesOn()
    {
        using var folder = new TemporaryFolder();
        var path = folder.File("book.db");

        var acknowledged = await KilledWriter.WriteAsync(path, afterEvents: 20);

        var kept = new BookFile(path).Read().Entries.Select(one => ((UpkeepDone)one.Entry).Note).ToList();
        Assert.True(kept.Count >= acknowledged, $"{kept.Count} kept of {acknowledged} acknowledged");
        Assert.Equal(Enumerable.Range(1, kept.Count).Select(number => $"number {number}"), kept);
        Assert.Equal(kept.Count + 1, new BookFile(path).Write(new BatchNoted(Happenings.Noon, "Ada", "PEA-1", "goes on")).Number);
    }
}
