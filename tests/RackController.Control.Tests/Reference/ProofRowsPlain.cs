using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>The rows that doubt what nobody would otherwise notice, each as one plain question to the chronicle. Which proof tests are
/// passed is Control's word.</summary>
internal static class ProofRowsPlain
{
    /// <summary>The vessels in which floats can contradict each other, each with its floats: the reservoirs and the trays.</summary>
    public static IEnumerable<(string Vessel, List<Sensor> Floats, Sensor? Level)> Vessels(Site site, Rack rack)
    {
        List<Sensor> Of(params SensorKind[] kinds) =>
            [.. site.Sensors.Where(sensor => sensor.Rack == rack.Id && kinds.Contains(sensor.Kind))];
        var level = Of(SensorKind.ReservoirLevel).SingleOrDefault();
        yield return (rack.Name, Of(SensorKind.ReservoirLowFloat, SensorKind.ReservoirFullFloat), level);
        foreach (var tray in Of(SensorKind.TrayFullFloat, SensorKind.TrayHighFloat).GroupBy(each => each.TierNumber))
        {
            yield return ($"{rack.Name}/tier {tray.Key}", [.. tray], null);
        }
    }

    /// <summary>What can contradict each other in a vessel: a float that is dry below one that is wet, or a low float that is wet far above
    /// the level.</summary>
    public static List<(Sensor[] Floats, Func<Page, bool> Contradict)> Pairs(List<Sensor> floats, Sensor? level)
    {
        var pairs = new List<(Sensor[], Func<Page, bool>)>();
        foreach (var lower in floats)
        {
            pairs.AddRange(floats.Where(upper => lower.HeightMm + 10 <= upper.HeightMm).Select(upper => (
                new[] { lower, upper },
                (Func<Page, bool>)(page => page.Believed[lower.Id.Index] == 0 && page.Believed[upper.Id.Index] == 1))));
        }

        pairs.AddRange(floats.Where(low => level is not null && low.Kind == SensorKind.ReservoirLowFloat).Select(low => (
            new[] { low },
            (Func<Page, bool>)(page =>
                page.Believed[low.Id.Index] == 1 && page.Believed[level!.Id.Index] < low.HeightMm - 20))));
        return pairs;
    }

    public static Answer FloatsContradict(
        Chronicle story, Rack rack, List<(Sensor[] Floats, Func<Page, bool> Contradict)> pairs, string key)
    {
        var owing = new HashSet<string>();
        MonotonicTime? since = null;
        var (standing, latches) = (-1, false);
        for (var each = 0; each <= story.Last; each++)
        {
            var page = story.Pages[each];
            (since, standing) = story.IsFirstOfItsRun(each) ? (null, -1) : (since, standing);
            var found = pairs.FindIndex(pair => pair.Contradict(page) && !pair.Floats.Any(one => one.Name == page.UnderTest));
            since = found < 0 ? null : since ?? page.At.Monotonic;
            found = page.At.Monotonic >= since + rack.Limits.FloatsContradictAfter ? found : -1;
            latches = found >= 0 && found != standing;
            if (latches)
            {
                owing.UnionWith(pairs[found].Floats.Select(one => one.Name));
            }

            standing = found;
            if (!story.IsFirstOfItsRun(each))
            {
                owing.ExceptWith(story.Pages[each - 1].Passed);
            }
        }

        var isPresent = standing >= 0 || owing.Count > 0;
        return new Answer(isPresent, isPresent, latches || Latches.Stands(story, key));
    }

    public static Answer FloatStill(Chronicle story, Rack rack, Sensor full, string key)
    {
        var isStill = FloodsWithoutMove(story, rack, full, key, rack.Limits.StillFloodsToTell)[^1] >= rack.Limits.StillFloodsToTell;
        return new Answer(isStill, isStill, Latched: false);
    }

    public static Answer FloatStuck(Chronicle story, Rack rack, Sensor full, string key)
    {
        var most = rack.Limits.StillFloodsToForbid;
        var still = FloodsWithoutMove(story, rack, full, key, most);
        var owes = false;
        for (var page = 0; page <= story.Last; page++)
        {
            var isLatched = story.Before(key, page).Latched && !story.Pages[page].Released.Contains(key);
            owes |= still[page] >= most && !isLatched;
            owes &= story.IsFirstOfItsRun(page) || !story.Pages[page - 1].Passed.Contains(full.Name);
        }

        return new Answer(owes, owes, still[^1] >= most || Latches.Stands(story, key));
    }

    public static Answer ProofTestFailed(Chronicle story, IEnumerable<string> items)
    {
        var hasFailed = items.Any(item => story.Pages.SkipLast(1).LastOrDefault(
            page => page.Passed.Contains(item) || page.Failed.Contains(item))?.Failed.Contains(item) ?? false);
        return new Answer(hasFailed, hasFailed, Latched: false);
    }

    public static Answer ProofTestOverdue(Chronicle story, IEnumerable<(string Item, Duration Interval)> items)
    {
        var first = story.Site.Racks.Min(rack => rack.Limits.FirstTestWithin);
        var isAnyDue = items.Any(each => story.PassedAt.TryGetValue(each.Item, out var passedAt)
            ? story.Now.Calendar >= passedAt + each.Interval
            : story.InService() >= Duration.Min(first, each.Interval));
        return new Answer(isAnyDue, isAnyDue, Latched: false);
    }

    // Page by page: how many floods in a row, up to so many, a float saw without a move, though its tier took part.
    private static List<int> FloodsWithoutMove(Chronicle story, Rack rack, Sensor full, string key, int most)
    {
        var counts = new List<int>();
        var (still, hasMoved, before) = (0, false, (double?)null);
        for (var each = 0; each <= story.Last; each++)
        {
            var page = story.Pages[each];
            (hasMoved, before) = story.IsFirstOfItsRun(each) ? (false, null) : (hasMoved, before);
            still = page.Released.Contains(key) ? 0 : still;
            var said = page.Believed[full.Id.Index];
            if (said is not null && before is not null && said != before)
            {
                (still, hasMoved) = (0, true);
            }

            before = said ?? before;
            if (page.Filled.Contains(rack.Id))
            {
                var takesPart = page.InUse[rack.Id.Index][full.TierNumber!.Value - 1];
                still = hasMoved || !takesPart ? 0 : Math.Min(still + 1, most);
                hasMoved = false;
            }

            counts.Add(still);
        }

        return counts;
    }
}
