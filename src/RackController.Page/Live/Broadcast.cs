using System.Collections.Immutable;
using RackController.Service;

namespace RackController.Page;

/// <summary>
/// Looks at the rack once a second while anybody follows, and keeps the newest of every part of the page. Whoever follows takes what is
/// newer than what they have: one that is slow misses what came between, and holds nobody up.
/// </summary>
internal sealed class Broadcast(IServedRack rack, NowViewOf views)
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private readonly Lock gate = new();
    private readonly Dictionary<string, KeptRegion> kept = [];
    private TaskCompletionSource next = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private string clock = "";
    private long version;
    private int followers;
    private bool isLooking;

    /// <summary>Somebody begins to follow.</summary>
    /// <param name="end">Ends everybody's following.</param>
    public void Join(CancellationToken end)
    {
        lock (gate)
        {
            followers++;
            if (isLooking)
            {
                return;
            }

            isLooking = true;
        }

        _ = LookAsync(end);
    }

    /// <summary>Somebody follows no more.</summary>
    public void Leave()
    {
        lock (gate)
        {
            followers--;
        }
    }

    /// <summary>What is newer than a version, once there is something newer.</summary>
    /// <param name="known">The version that is known; 0 for nothing.</param>
    /// <param name="cancellation">Ends the wait.</param>
    public async Task<News> AfterAsync(long known, CancellationToken cancellation)
    {
        while (true)
        {
            Task waiting;
            lock (gate)
            {
                if (version > known)
                {
                    return new News(version, clock, [.. kept.Values.Where(region => region.Version > known).Select(at => at.Region)]);
                }

                waiting = next.Task;
            }

            await waiting.WaitAsync(cancellation).ConfigureAwait(false);
        }
    }

    private async Task LookAsync(CancellationToken end)
    {
        using var timer = new PeriodicTimer(LookEvery);
        do
        {
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(end);
            patience.CancelAfter(Patience);
            try
            {
                var view = views.View(await rack.LookAsync(patience.Token).ConfigureAwait(false));
                Keep(view.Clock, await NowRegions.RenderAsync(view).ConfigureAwait(false));
            }
            catch (OperationCanceledException) when (!end.IsCancellationRequested)
            {
                // A scan that hangs shows no picture: whoever follows hears nothing, and their page says that it is stale.
                continue;
            }
            catch (OperationCanceledException)
            {
                return;
            }
            catch (Exception e)
            {
                // Whoever follows hears nothing meanwhile, as above; why stands in the log.
                rack.Complain("the page cannot be drawn; it is tried again", e);
            }
        }
        while (await StillFollowedAsync(timer, end).ConfigureAwait(false));
    }

    private async Task<bool> StillFollowedAsync(PeriodicTimer timer, CancellationToken end)
    {
        try
        {
            await timer.WaitForNextTickAsync(end).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            return false;
        }

        lock (gate)
        {
            return isLooking = followers > 0;
        }
    }

    private void Keep(string now, ImmutableArray<Region> regions)
    {
        TaskCompletionSource tell;
        lock (gate)
        {
            version++;
            clock = now;
            foreach (var region in regions)
            {
                if (!kept.TryGetValue(region.Id, out var before) || before.Region.Html != region.Html)
                {
                    kept[region.Id] = new KeptRegion(region, version);
                }
            }

            tell = next;
            next = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        }

        tell.SetResult();
    }

    private sealed record KeptRegion(Region Region, long Version);
}

/// <summary>What is new.</summary>
/// <param name="Version">Up to which version.</param>
/// <param name="Clock">The time of the picture.</param>
/// <param name="Regions">The parts that changed.</param>
internal sealed record News(long Version, string Clock, ImmutableArray<Region> Regions);
