namespace RackController.Service.Tests;

public sealed class KilledJournalTests
{
    /// <summary>A kill gives the process no chance to flush: what was acknowledged before it must be on the disk.</summary>
    [Fact]
    public async Task NothingThatWasAcknowledgedIsLostToAKill()
    {
        using var folder = new TemporaryFolder();
        var path = folder.File("journal.db");

        var acknowledged = await KilledWriter.WriteAsync(path, afterEvents: 200);

        var opening = JournalOpening.Open(path, Happenings.Noon);
        using var file = opening.File;
        Assert.Null(opening.SetAside);
        var kept = JournalReader.Events(path);
        Assert.True(kept.Count >= acknowledged, $"{kept.Count} kept of {acknowledged} acknowledged");
        Assert.Equal(Enumerable.Range(1, kept.Count).Select(number => $"number {number}"), kept);
        Assert.Equal(kept.Count, opening.Memory?.Items["pump run"]);
    }
}
