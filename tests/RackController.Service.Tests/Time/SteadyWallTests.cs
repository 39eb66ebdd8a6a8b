using NodaTime;
using RackController.Model;

namespace RackController.Service.Tests.Time;

public sealed class SteadyWallTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 7, 0);
    private readonly SteadyWall wall = new();

    [Fact]
    public void ClocksThatAreReadOneAfterTheOtherGoTogetherToTheNanosecond()
    {
        Assert.Equal(Start, At(0, jitterNs: 0));
        Assert.Equal(Start + Duration.FromSeconds(1), At(1, jitterNs: 700));
        Assert.Equal(Start + Duration.FromSeconds(2), At(2, jitterNs: -40_000));
    }

    [Fact]
    public void AClockThatIsSetIsFollowedAtOnce()
    {
        At(0, jitterNs: 0);
        Assert.Equal(Start + Duration.FromHours(1) + Duration.FromSeconds(1), At(1, jitterNs: 3_600_000_000_000));
        Assert.Equal(Start + Duration.FromSeconds(2) + Duration.FromMilliseconds(-5), At(2, jitterNs: -5_000_000));
    }

    [Fact]
    public void AClockThatIsSlewedIsNeverAMillisecondOff()
    {
        // Discipline by network time slews by at most half a millisecond a second.
        for (var second = 0; second < 100; second++)
        {
            var slewNs = second * 500_000L;
            var offBy = At(second, slewNs) - (Start + Duration.FromSeconds(second) + Duration.FromNanoseconds(slewNs));
            Assert.InRange(offBy.TotalMilliseconds, -1, 1);
        }
    }

    private Instant At(int second, long jitterNs) => wall.At(
        MonotonicTime.FromMilliseconds(second * 1000L),
        Start + Duration.FromSeconds(second) + Duration.FromNanoseconds(jitterNs));
}
