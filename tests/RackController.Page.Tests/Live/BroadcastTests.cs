using RackController.Control;
using RackController.Model;
using RackController.Service;
using RackController.Testing;

namespace RackController.Page.Tests;

public sealed class BroadcastTests : IDisposable
{
    private readonly CancellationTokenSource end = new();

    public void Dispose()
    {
        end.Cancel();
        end.Dispose();
    }

    [Fact]
    public void WhoeverComesAsTheLastOneGoesStartsNoSecondLook()
    {
        var rack = new LookedAtRack(new TaskCompletionSource<SiteStatus>().Task);
        var broadcast = new Broadcast(rack, new NowViewOf(rack.Site, speed: 1, books: null));

        broadcast.Join(end.Token);
        broadcast.Leave();
        broadcast.Join(end.Token);

        Assert.Equal(1, rack.Looks);
    }

    [Fact]
    public async Task APictureThatCannotBeDrawnIsToldAndTriedAgain()
    {
        var rack = new LookedAtRack(Task.FromException<SiteStatus>(new InvalidOperationException("of a test")));
        var broadcast = new Broadcast(rack, new NowViewOf(rack.Site, speed: 1, books: null));

        broadcast.Join(end.Token);

        Assert.Equal("of a test", (await rack.Complained.Task.WaitAsync(TimeSpan.FromSeconds(30))).Message);
        while (rack.Looks < 2)
        {
            await Task.Delay(50);
        }
    }

    private sealed class LookedAtRack(Task<SiteStatus> picture) : IServedRack
    {
        private int looks;

        public Site Site { get; } = Sites.OneRack();

        public int Looks => Volatile.Read(ref looks);

        public TaskCompletionSource<Exception> Complained { get; } = new();

        public Task<SiteStatus> LookAsync(CancellationToken cancellation)
        {
            Interlocked.Increment(ref looks);
            return picture.WaitAsync(cancellation);
        }

        public void Complain(string what, Exception why) => Complained.TrySetResult(why);

        public bool TryAsk(OperatorRequest request) => false;

        public IAsyncEnumerable<ControlEvent> FollowAsync(CancellationToken cancellation) => throw new NotSupportedException();

        public IReadOnlyList<Sample> UnwrittenSamples() => [];

        public void Record(string what, string because)
        {
        }

        public void StartAgain(string because)
        {
        }
    }
}
