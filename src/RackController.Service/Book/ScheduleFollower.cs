using NodaTime;
using RackController.Control;
using RackController.Growing;
using RackController.RackFile;

namespace RackController.Service;

/// <summary>
/// Has the schedules follow what stands on the tiers, where the rack file says that they should: it writes what batches ask into the rack
/// file, as a person would, and has the controller start again with it. It does so only while no flood is under way and the time is
/// known, and never puts a file in place that the rack could not be driven by.
/// </summary>
/// <param name="rack">The rack.</param>
/// <param name="book">The growing book.</param>
/// <param name="shelf">The rack file and its earlier versions.</param>
/// <param name="runsBy">What the rack file said when this run began.</param>
/// <param name="speed">How many times faster than real time the rack runs.</param>
/// <param name="alarms">Who is told when it cannot follow.</param>
internal sealed class ScheduleFollower(
    IServedRack rack, BookDesk book, RackFileShelf shelf, string runsBy, double speed, ControllerAlarms alarms)
{
    private static readonly TimeSpan lookEvery = TimeSpan.FromSeconds(30);

    /// <summary>One for a run.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="options">How it is run.</param>
    /// <param name="alarms">Who is told when it cannot follow.</param>
    public static ScheduleFollower Of(IServedRack rack, ServiceOptions options, ControllerAlarms alarms) => new(
        rack, new BookDesk(options.Folder.Book, rack.Site), new RackFileShelf(options.RackFile, options.Folder.RackFileVersions),
        options.RackFileText, options.Speed, alarms);

    /// <summary>Follows until the end, or until it has put something in place: the next run goes on.</summary>
    /// <param name="end">The end.</param>
    public async Task FollowAsync(CancellationToken end)
    {
        if (!rack.Site.Batches.ScheduleFollows)
        {
            return;
        }

        var every = TimeSpan.FromSeconds(Math.Max(1, lookEvery.TotalSeconds / speed));
        while (!end.IsCancellationRequested && !await FollowOnceAsync(end).ConfigureAwait(false))
        {
            await Task.WhenAny(Task.Delay(every, end)).ConfigureAwait(false);
        }
    }

    /// <summary>Looks once.</summary>
    /// <returns>Whether something was put in place, and the controller starts again.</returns>
    internal async Task<bool> FollowOnceAsync(CancellationToken end)
    {
        try
        {
            var status = await rack.LookAsync(end).ConfigureAwait(false);
            return status.At.WallTrusted && IsQuiet(status) && Follow(status.At.Wall);
        }
        catch (OperationCanceledException) when (end.IsCancellationRequested)
        {
            return false;
        }
        catch (Exception e)
        {
            // Whatever it is, the racks run by what they have, somebody is told, and it is tried again.
            Tell($"schedules cannot follow: {e.Message.ReplaceLineEndings(" ").TrimEnd('.')}");
            return false;
        }
    }

    // A flood is not to be cut short, nor a test that a person stands at.
    private static bool IsQuiet(SiteStatus status) =>
        status.ProofTest is null && status.Floods.All(phase => phase is FloodPhase.Idle or FloodPhase.Waiting);

    private bool Follow(Instant now)
    {
        var growing = book.Look();
        if (WhatIsDoubtful(growing) is { } doubt)
        {
            Tell(doubt);
            return false;
        }

        var asks = BatchAsks.Of(rack.Site, growing, now.InZone(rack.Site.Zone).Date);
        var troubles = asks.SelectMany(one => one.Disagreements).ToList();
        var (inPlace, trouble) = PutInPlace([.. asks.Where(one => one.IsNews)], now);
        if (inPlace.Count > 0)
        {
            rack.Record("rack file changed", $"of what stands on the tiers: {string.Join("; ", inPlace.SelectMany(one => one.Changes))}");
            rack.StartAgain("the schedule follows what stands on the tiers");
            return true;
        }

        if (trouble is not null)
        {
            troubles.Insert(0, trouble);
        }

        if (troubles.Count > 0)
        {
            Tell(troubles[0] + (troubles.Count > 1 ? $" ({troubles.Count - 1} more on the page of batches)" : ""));
        }
        else
        {
            alarms.Clear(ControllerTrouble.ScheduleCannotFollow);
        }

        return false;
    }

    // A book that is gone, or that is known in part only, is no reason to put lights out.
    private string? WhatIsDoubtful(GrowingBook growing) =>
        !book.Unreadable.IsEmpty ? $"entries of the growing book cannot be read ({string.Join(", ", book.Unreadable)})"
        : growing.Entries.IsEmpty && rack.Site.Racks.Any(each => !each.ForBatches.IsNone) ? "the growing book that they followed is gone"
        : null;

    // One rack that cannot have what is asked keeps no other from it.
    private (List<RackAsks> InPlace, string? Trouble) PutInPlace(List<RackAsks> news, Instant now)
    {
        List<RackAsks> inPlace = [];
        string? trouble = null;
        var before = news.Count > 0 ? shelf.Read() : runsBy;
        if (before != runsBy)
        {
            return (
                [], $"{shelf.Name} was changed by hand and the rack does not run by it yet: start the controller again, or take it back");
        }

        var text = before;
        foreach (var one in news)
        {
            if (ForBatchesSection.Put(text, one.Rack, one.Asked) is { } changed)
            {
                text = changed;
                inPlace.Add(one);
            }
            else
            {
                trouble ??= $"{one.Rack.Name} cannot have what is asked ({string.Join("; ", one.Changes)}): {WhyNot(text, one)}";
            }
        }

        if (inPlace.Count > 0)
        {
            // What a grower wrote is still in it; only what batches asked before is not kept.
            shelf.Replace(text, now, keepsOld: rack.Site.Racks.All(each => each.ForBatches.IsNone));
        }

        return (inPlace, trouble);
    }

    private string WhyNot(string text, RackAsks one) => ForBatchesSection.Complaints(text, one.Rack, one.Asked, shelf.Name)
        .FirstOrDefault(complaint => complaint.Severity == Severity.Error) is { } complaint
        ? $"{complaint.What}"
        : $"it is written in {shelf.Name} in a way in which no line can be put in";

    private void Tell(string what) => alarms.Raise(ControllerTrouble.ScheduleCannotFollow, what);
}
