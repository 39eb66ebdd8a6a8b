using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Scanning;

/// <summary>What is told of the wall clock, and whether it went with the monotonic one.</summary>
public class ClockWatchTests : IEventSink
{
    private static readonly Moment start = new(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
    private readonly List<ControlEvent> events = [];
    private readonly ClockWatch watch = new(start);

    void IEventSink.Take(ControlEvent happened) => events.Add(happened);

    [Fact]
    public void AClockThatGoesWithTheOtherIsSteady()
    {
        Assert.True(watch.Watch(After(seconds: 1, wallMs: 1_000), this));
        Assert.True(watch.Watch(After(seconds: 3, wallMs: 3_000), this));
        Assert.Empty(events);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    [InlineData(1_999)]
    [InlineData(-1_999)]
    public void ADriftIsNotSteadyAndNotTold(int ms)
    {
        Assert.False(watch.Watch(After(seconds: 1, wallMs: 1_000 + ms), this));
        Assert.Empty(events);
        Assert.True(watch.Watch(After(seconds: 2, wallMs: 2_000 + ms), this));
    }

    [Theory]
    [InlineData(2_000, "stepped on by 2 s")]
    [InlineData(-2_000, "stepped back by 2 s")]
    [InlineData(3_600_000, "stepped on by 1 h")]
    [InlineData(-3_600_000, "stepped back by 1 h")]
    public void AStepIsTold(int ms, string what)
    {
        Assert.False(watch.Watch(After(seconds: 1, wallMs: 1_000 + ms), this));
        var told = Assert.Single(events);
        Assert.Equal((EventKind.Clock, "wall clock", what), (told.Kind, told.Subject, told.What));
        Assert.Equal("it was set against the monotonic clock", told.Because);
        Assert.True(watch.Watch(After(seconds: 2, wallMs: 2_000 + ms), this));
        Assert.Single(events);
    }

    [Fact]
    public void ThatTrustGoesAndComesIsToldOnceEach()
    {
        Assert.False(watch.Watch(After(seconds: 1, wallMs: 1_000) with { WallTrusted = false }, this));
        Assert.True(watch.Watch(After(seconds: 2, wallMs: 2_000) with { WallTrusted = false }, this));
        Assert.False(watch.Watch(After(seconds: 3, wallMs: 3_000), this));
        Assert.Equal(
            [("not trusted", "nothing that knows the time vouches for it"), ("trusted", "something that knows the time has set it")],
            events.Select(each => (each.What, each.Because)));
    }

    private static Moment After(int seconds, int wallMs) => start with
    {
        Monotonic = start.Monotonic + Duration.FromSeconds(seconds),
        Wall = start.Wall + Duration.FromMilliseconds(wallMs),
    };
}
