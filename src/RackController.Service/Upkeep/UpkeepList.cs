using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.Model;

namespace RackController.Service;

/// <summary>Where the works of upkeep of a site stand, by its journal and its growing book.</summary>
/// <param name="Works">Every work of every rack that is ever asked for, what is due first in front.</param>
/// <param name="Relays">How much of its life each relay has had, the most worn first.</param>
public sealed record UpkeepList(ImmutableArray<UpkeepStatus> Works, ImmutableArray<RelayLife> Relays)
{
    /// <summary>Reads it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="journal">Its journal.</param>
    /// <param name="done">The works that were put down as done, in any order.</param>
    /// <param name="now">The time by a trusted wall clock.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public static UpkeepList Read(Site site, JournalHistory journal, IEnumerable<UpkeepDone> done, Instant now)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(journal);
        var begins = Instant.Min(journal.Begins() ?? now, now);
        var last = done.GroupBy(one => (one.Rack, one.Work)).ToDictionary(same => same.Key, same => same.Max(one => one.At));
        var use = RackUse.Read(journal, site, last.Values.Append(begins).Min(), now);
        return new UpkeepList(
            Judged(site, now, (rack, work) => last.TryGetValue((rack.Name, work.Key()), out var at)
                ? use.Since(rack, at, wasDone: true)
                : use.Since(rack, begins, wasDone: false)),
            RelayLife.AllOf(site, journal.Remembered()));
    }

    /// <summary>How it is where nothing was used yet.</summary>
    /// <param name="site">The site.</param>
    /// <param name="now">The time.</param>
    public static UpkeepList OfNew(Site site, Instant now)
    {
        ArgumentNullException.ThrowIfNull(site);
        return new UpkeepList(
            Judged(site, now, (_, _) => new UpkeepUse(now, WasDone: false, 0, Duration.Zero)), RelayLife.AllOf(site, memory: null));
    }

    private static ImmutableArray<UpkeepStatus> Judged(Site site, Instant now, Func<Rack, UpkeepWork, UpkeepUse> use)
    {
        var works =
            from rack in site.Racks
            from work in UpkeepWorks.Of(site, rack)
            let every = UsualIntervals.Of(rack, work)
            where every is not null
            select UpkeepStatus.Of(rack, work, every, use(rack, work), now, site.Zone);
        return [.. works.OrderByDescending(one => one.First.Share)];
    }
}
