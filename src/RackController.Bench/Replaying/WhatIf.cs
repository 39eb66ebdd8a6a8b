using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>
/// Asks what another rack file would have made of what is on record. Two controllers are told the same: one by the file that drove the
/// rack, one by the other file, which remembers what it did itself and is scanned whenever it has something due. What differs comes of the
/// file alone. It cannot know what the water would have done: no sensor on record saw it.
/// </summary>
public sealed class WhatIf
{
    private const int MostDifferences = 50;

    private readonly Site other;
    private readonly WhatIfSide with;
    private readonly WhatIfTimes times;
    private readonly List<ReplayDifference> differences = [];
    private readonly SortedSet<string> unknown = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, int> tripsThen = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, int> alarmsThen = new(StringComparer.Ordinal);
    private long differenceCount;

    /// <summary>Prepares to ask.</summary>
    /// <param name="other">The site by the other file.</param>
    public WhatIf(Site other)
    {
        ArgumentNullException.ThrowIfNull(other);
        this.other = other;
        with = new WhatIfSide(other);
        times = new WhatIfTimes(other);
    }

    /// <summary>Tells of a run; one after the other.</summary>
    /// <param name="site">Its site, from the rack file that is on record with it.</param>
    /// <param name="run">The run.</param>
    public void Tell(Site site, RecordedRun run)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(run);
        var then = new WhatIfSide(site);
        var match = new SiteMatch(run.Facts?.Names ?? PartNames.Of(site), site);
        var toOther = new SiteMatch(PartNames.Of(site), other);
        var pair = new Pair(then, new SiteMatch(PartNames.Of(other), site));
        unknown.UnionWith(other.Sensors.Where(sensor => pair.Sensor(sensor.Id) is null).Select(sensor => sensor.Name));
        RecordedSensors? sensors = null;
        foreach (var step in RecordSteps.Of(run))
        {
            switch (step)
            {
                case Loses:
                    times.Pause();
                    with.Rest();
                    break;
                case TakesCharge { Page: var page, State: var state }:
                    sensors = new RecordedSensors(site, match);
                    sensors.Note(state.Readings, page.At.Monotonic);
                    then.Begin(page.At, state.Memory);
                    with.Begin(page.At, with.Memory ?? state.Memory);
                    break;
                case Scans { Scan: var scan }:
                    CatchUp(pair, sensors!, scan);
                    sensors!.Note(scan.Readings, scan.At.Monotonic);
                    sensors.Fill(then.Readings, scan.At.Monotonic);
                    Fill(pair, scan.At.Monotonic);
                    times.Pass(scan.At.Monotonic, pair.IsOnThen, with);
                    OperatorRequest[] asked = [.. scan.Requests.Select(match.Request).OfType<OperatorRequest>()];
                    then.Scan(scan.At, scan.Conditions, asked);
                    with.Scan(scan.At, scan.Conditions, [.. asked.Select(toOther.Request).OfType<OperatorRequest>()]);
                    Compare(pair);
                    break;
            }
        }

        times.Pause();
        with.Rest();
        Add(then.Counts.Trips, tripsThen);
        Add(then.Counts.Alarms, alarmsThen);
    }

    /// <summary>What came of it.</summary>
    public WhatIfResult Result() => new(
        times.Loads(), Changes(tripsThen, with.Counts.Trips), Changes(alarmsThen, with.Counts.Alarms), [.. differences], differenceCount,
        times.Told, [.. unknown]);

    /// <summary>Scans the other controller whenever it has something due before a scan that is on record.</summary>
    private void CatchUp(Pair pair, RecordedSensors sensors, RecordedScan next)
    {
        while (with.DueBefore(next) is { } due)
        {
            sensors.Fill(pair.Then.Readings, due.Monotonic);
            Fill(pair, due.Monotonic);
            times.Pass(due.Monotonic, pair.IsOnThen, with);
            with.Scan(due, ScanConditions.Good, []);
            Compare(pair);
        }
    }

    // What nobody recorded is taken as harmless where it is a contact, and stays unknown where it is a measured value.
    private void Fill(Pair pair, MonotonicTime at)
    {
        foreach (var sensor in other.Sensors)
        {
            with.Readings[sensor.Id] = pair.Sensor(sensor.Id) is { } there ? pair.Then.Readings[there]
                : sensor.HarmfulValue is { } harmful ? new Reading(1 - harmful, ReadingQuality.Good, at)
                : default;
        }
    }

    private void Compare(Pair pair)
    {
        foreach (var load in other.Loads)
        {
            if (pair.IsOnThen(load.Id) is not { } then || !times.BeginsToDiffer(load.Id, then != with.IsOn(load.Id)))
            {
                continue;
            }

            differenceCount++;
            if (differences.Count < MostDifferences)
            {
                differences.Add(new ReplayDifference(
                    with.At, load.Name, Words(then), Words(with.IsOn(load.Id)), with.Why(load.Id)));
            }
        }
    }

    private static string Words(bool isOn) => isOn ? "on" : "off";

    private static void Add(ImmutableArray<Tally> more, SortedDictionary<string, int> sums)
    {
        foreach (var tally in more)
        {
            sums[tally.Subject] = sums.GetValueOrDefault(tally.Subject) + tally.Count;
        }
    }

    private static ImmutableArray<WhatIfCount> Changes(SortedDictionary<string, int> then, ImmutableArray<Tally> now)
    {
        var with = now.ToDictionary(tally => tally.Subject, tally => tally.Count);
        return
        [
            .. then.Keys.Union(with.Keys).Order(StringComparer.Ordinal)
                .Select(subject => new WhatIfCount(subject, then.GetValueOrDefault(subject), with.GetValueOrDefault(subject)))
                .Where(count => count.Then != count.With),
        ];
    }

    /// <summary>The controller by the file on record, and where the parts of the other file are on its site.</summary>
    private sealed record Pair(WhatIfSide Then, SiteMatch FromOther)
    {
        public SensorId? Sensor(SensorId ofOther) => FromOther.Sensor(ofOther.Index);

        /// <summary>Whether a load of the other file was on; null when it was not there.</summary>
        public bool? IsOnThen(LoadId ofOther) => FromOther.Load(ofOther.Index) is { } there ? Then.IsOn(there) : null;
    }
}
