using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service.Tests;

public sealed class EventFeedTests
{
    private readonly EventFeed feed = new();

    [Fact]
    public async Task WhoeverFollowsHearsWhatHappensFromThenOn()
    {
        Happens("before");
        using var end = new CancellationTokenSource();
        await using var following = feed.FollowAsync(end.Token).GetAsyncEnumerator(end.Token);
        var first = following.MoveNextAsync();

        Happens("after");

        Assert.True(await first);
        Assert.Equal("after", following.Current.What);
    }

    [Fact]
    public async Task NobodyHearsBeforeTheRelaysWereTold()
    {
        using var end = new CancellationTokenSource();
        await using var following = feed.FollowAsync(end.Token).GetAsyncEnumerator(end.Token);
        var first = following.MoveNextAsync();

        feed.Happened([Event("told")], null);
        Assert.False(first.IsCompleted);
        feed.GoOn();

        Assert.True(await first);
    }

    [Fact]
    public async Task WhoeverIsSlowLosesTheOldest()
    {
        using var end = new CancellationTokenSource();
        await using var following = feed.FollowAsync(end.Token).GetAsyncEnumerator(end.Token);
        var first = following.MoveNextAsync();
        Happens("first");
        Assert.True(await first);

        for (var number = 0; number < 1500; number++)
        {
            Happens($"{number}");
        }

        Assert.True(await following.MoveNextAsync());
        Assert.Equal("500", following.Current.What);
    }

    private void Happens(string what)
    {
        feed.Happened([Event(what)], null);
        feed.GoOn();
    }

    private static ControlEvent Event(string what) => new(
        new Moment(MonotonicTime.Zero, Instant.FromUtc(2027, 1, 15, 11, 0), WallTrusted: true), EventKind.Load, "north/pump", what,
        "of a test");
}
