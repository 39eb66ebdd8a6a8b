using NodaTime;

namespace RackController.Service.Tests;

public sealed class LatenessTallyTests
{
    [Fact]
    public void AScanCountsInTheClassThatItsLatenessDoesNotExceed()
    {
        var tally = new LatenessTally();
        foreach (var ms in new[] { 0, 0.1, 0.11, 500, 501 })
        {
            tally.Count(Duration.FromMilliseconds(ms));
        }

        var read = tally.Read();

        Assert.Equal<long>([2, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1], read.Counts);
        Assert.Equal(read.Counts.Length - 1, read.ClassEnds.Length);
        Assert.Equal(Duration.FromMilliseconds(1001.21), read.Total);
    }
}
