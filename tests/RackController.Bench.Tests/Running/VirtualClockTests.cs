using NodaTime;
using RackController.Model;

namespace RackController.Bench.Tests.Running;

public sealed class VirtualClockTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 0, 0);
    private readonly VirtualClock clock = new(Start);

    [Fact]
    public void AStepMovesTheWallAndNothingElse()
    {
        clock.AdvanceTo(MonotonicTime.FromMilliseconds(60_000));
        var before = clock.Moment;
        clock.Step(-Duration.FromHours(3));

        Assert.Equal(before.Wall - Duration.FromHours(3), clock.Moment.Wall);
        Assert.Equal(before.Monotonic, clock.Moment.Monotonic);
        Assert.True(clock.Moment.WallTrusted);
        Assert.Equal(Start + Duration.FromMinutes(1), clock.True);
    }

    [Fact]
    public void ABootBeginsTheMonotonicClockAnew()
    {
        clock.AdvanceTo(MonotonicTime.FromMilliseconds(3_600_000));
        var before = clock.Moment.Monotonic;
        clock.Boot();

        Assert.True(clock.Moment.Monotonic < before);
        Assert.Equal(clock.Bench, clock.FromBoard(clock.Moment.Monotonic));
        Assert.Equal(MonotonicTime.Never, clock.FromBoard(MonotonicTime.Never));
    }

    [Fact]
    public void AClockThatIsSetRightSaysTheTruth()
    {
        clock.Set(Instant.FromUtc(2026, 1, 1, 0, 0));
        clock.AdvanceTo(MonotonicTime.FromMilliseconds(5_000));
        Assert.Equal(Instant.FromUtc(2026, 1, 1, 0, 0) + Duration.FromSeconds(5), clock.Moment.Wall);
        clock.SetRight();
        Assert.Equal(clock.True, clock.Moment.Wall);
    }
}
