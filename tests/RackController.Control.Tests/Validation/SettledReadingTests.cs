using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Validation;

public class SettledReadingTests
{
    private static readonly MonotonicTime now = MonotonicTime.FromMilliseconds(60_000);

    [Theory]
    [InlineData(60_000, true)]
    [InlineData(58_000, true)]
    [InlineData(57_999, false)]
    [InlineData(60_001, false)]
    public void TheSameAgainIsTheSameOnlyWhileItIsFresh(long takenAtMs, bool isRepeated) =>
        Assert.Equal(isRepeated, IsRepeated(MonotonicTime.FromMilliseconds(takenAtMs)));

    [Theory]
    [InlineData(long.MinValue)]
    [InlineData(long.MaxValue)]
    public void ATimeThatIsNonsenseIsNotFresh(long nanoseconds) => Assert.False(IsRepeated(new MonotonicTime(nanoseconds)));

    private static bool IsRepeated(MonotonicTime takenAt)
    {
        var settled = new SettledReading(Sites.OneRack().Sensors[0] with { StaleAfter = Duration.FromSeconds(2) });
        settled.Take(new Reading(21, ReadingQuality.Good, now), settles: true);
        return settled.IsRepeatedBy(new Reading(21, ReadingQuality.Good, takenAt), now);
    }
}
