using NodaTime;

namespace RackController.Service.Tests;

public sealed class ClockTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 6, 1, 12, 0);

    [Fact]
    public void AFastClockStepsExactlyFromOneDueTimeToTheNext()
    {
        using var clock = new FastClock(Noon, speed: 1000);
        var start = clock.Now();
        var period = Duration.FromMilliseconds(100);

        for (var scan = 1; scan <= 50; scan++)
        {
            clock.SleepUntil(start.Monotonic + period * scan);
            Assert.Equal(start.Monotonic + period * scan, clock.Now().Monotonic);
        }

        Assert.Equal(Noon + period * 50, clock.Now().Wall);
        Assert.True(clock.Now().WallTrusted);
    }

    [Fact]
    public void AWokenSleeperDoesNotReachItsDueTime()
    {
        using var clock = new FastClock(Noon, speed: 1);
        var due = clock.Now().Monotonic + Duration.FromHours(1);
        clock.Wake();

        clock.SleepUntil(due);

        Assert.True(clock.Now().Monotonic < due);
    }

    [Fact]
    public void TheHostClockGoesForward()
    {
        using var clock = new HostClock(new HostIsTrusted());
        var before = clock.Now().Monotonic;

        clock.SleepUntil(before + Duration.FromMilliseconds(2));

        Assert.True(clock.Now().Monotonic > before);
    }
}
