using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Words;

/// <summary>How times, lengths and counts read.</summary>
public class WordsTests
{
    private static readonly DateTimeZone newYork = DateTimeZoneProviders.Tzdb["America/New_York"];

    // 23:00:00 on Monday the first of June in New York.
    private static readonly Moment now =
        new(MonotonicTime.FromMilliseconds(5_000), Instant.FromUtc(2026, 6, 2, 3, 0), WallTrusted: true);

    [Theory]
    [InlineData(-600, "22:50:00")]
    [InlineData(0, "23:00:00")]
    [InlineData(3_599, "23:59:59")]
    [InlineData(3_600, "Tue 2 Jun 00:00:00")]
    [InlineData(-24 * 3_600, "Sun 31 May 23:00:00")]
    public void ATimeIsSaidByTheLocalClockAndWithItsDateOnAnotherDay(int seconds, string words)
    {
        var clock = new ClockFace(now, newYork);
        Assert.Equal(now.Monotonic, clock.Now);
        Assert.Equal(words, clock.At(now.Monotonic + Duration.FromSeconds(seconds)));
    }

    [Theory]
    [InlineData(300, "0.3 s")]
    [InlineData(9_900, "9.9 s")]
    [InlineData(10_000, "10 s")]
    [InlineData(10_900, "10 s")]
    [InlineData(60_000, "1 min")]
    [InlineData(5_400_000, "1 h 30 min")]
    [InlineData(90_061_000, "25 h 1 min 1 s")]
    public void ALengthIsSaidInTheUnitsThatItHas(int ms, string words) =>
        Assert.Equal(words, Duration.FromMilliseconds(ms).InWords());

    [Theory]
    [InlineData(1, "once")]
    [InlineData(2, "2 times")]
    [InlineData(0, "0 times")]
    public void ACountOfOneIsOnce(int count, string words) => Assert.Equal(words, count.Times());
}
