using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Threading.Channels;
using RackController.Control;

namespace RackController.Service;

/// <summary>Hands on what happens to whoever follows it: pages, programs, notices. Each has a queue of its own; one that is slow loses the
/// oldest of what it has not taken, and holds nobody up.</summary>
internal sealed class EventFeed : IScanListener
{
    /// <summary>More than happens in the minute after a supply has come back on a large site.</summary>
    private const int MostWaiting = 1000;

    private readonly Lock gate = new();
    private ImmutableArray<Channel<ControlEvent>> followers = [];
    private ImmutableArray<ControlEvent> heard = [];

    /// <summary>Everything that happens from now on, until the token ends it.</summary>
    public async IAsyncEnumerable<ControlEvent> FollowAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        var mine = Channel.CreateBounded<ControlEvent>(
            new BoundedChannelOptions(MostWaiting) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true });
        Change(all => all.Add(mine));
        try
        {
            await foreach (var happened in mine.Reader.ReadAllAsync(cancellation).ConfigureAwait(false))
            {
                yield return happened;
            }
        }
        finally
        {
            Change(all => all.Remove(mine));
        }
    }

    /// <inheritdoc/>
    public void Happened(ControlEvent[] events, ControlMemory? memory)
    {
        lock (gate)
        {
            heard = followers.IsEmpty ? [] : heard.AddRange(events);
        }
    }

    /// <inheritdoc/>
    public void GoOn()
    {
        ImmutableArray<ControlEvent> events;
        ImmutableArray<Channel<ControlEvent>> listening;
        lock (gate)
        {
            (events, heard) = (heard, []);
            listening = followers;
        }

        foreach (var happened in events)
        {
            foreach (var follower in listening)
            {
                follower.Writer.TryWrite(happened);
            }
        }
    }

    private void Change(Func<ImmutableArray<Channel<ControlEvent>>, ImmutableArray<Channel<ControlEvent>>> change)
    {
        lock (gate)
        {
            followers = change(followers);
        }
    }
}
