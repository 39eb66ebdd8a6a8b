using NodaTime;
using RackController.Model;

namespace RackController.Service.Tests;

public sealed class ScanPaceTests
{
    private static readonly ScanTiming Timing = new(Duration.FromMilliseconds(100), Duration.FromSeconds(1));

    private readonly ScanPace pace = new(Timing, At(0));

    [Fact]
    public void SmallDelaysDoNotAddUp()
    {
        foreach (var ms in (int[])[3, 105, 202, 308])
        {
            pace.Begin(At(ms));
        }

        Assert.Equal(At(400), pace.NextDue);
        Assert.Equal(0, pace.Slips);
        Assert.Equal(Duration.FromMilliseconds(8), pace.WorstLateness);
    }

    [Fact]
    public void AScanMoreThanAPeriodLateIsASlipAndIsNotMadeUpFor()
    {
        pace.Begin(At(0));

        pace.Begin(At(450));

        Assert.Equal(1, pace.Slips);
        Assert.Equal(At(500), pace.NextDue);
        Assert.False(pace.IsLate);
    }

    [Fact]
    public void AScanThatIsWokenEarlyKeepsTheNextDueTime()
    {
        pace.Begin(At(0));

        pace.Begin(At(40));

        Assert.Equal(At(100), pace.NextDue);
        Assert.Equal(Duration.Zero, pace.LateBy);
    }

    [Fact]
    public void AScanIsLateAfterItsLimitAndNotBefore()
    {
        pace.Begin(At(0));

        pace.Begin(At(1100));
        Assert.False(pace.IsLate);

        pace.Begin(At(2201));
        Assert.True(pace.IsLate);
    }

    [Fact]
    public void TheFirstScanIsNeverLateHoweverLongTheStartTook()
    {
        pace.Begin(At(5_000));

        Assert.Equal(Duration.Zero, pace.LateBy);
        Assert.Equal(At(5_100), pace.NextDue);
    }

    private static MonotonicTime At(long milliseconds) => MonotonicTime.FromMilliseconds(1_000_000 + milliseconds);
}
