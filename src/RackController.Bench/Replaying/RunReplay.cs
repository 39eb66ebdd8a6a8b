using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>
/// Runs Control again from what is on record of a run, and holds what comes out against it: every command and every event, scan by
/// scan, and what the controller remembers wherever that is on record. It looks at nothing else, so what is the same was decided by
/// what is on record alone. A controller that has something due where the one on record had nothing is scanned there too.
/// </summary>
public sealed class RunReplay : IEventSink
{
    private const int MostDifferences = 50;
    private const int SameToBeCertain = 2;

    private readonly Site site;
    private readonly SiteMatch match;
    private readonly Readings readings;
    private readonly SwitchState?[] recorded;
    private readonly bool[] differs;
    private readonly List<ControlEvent> events = [];
    private readonly List<ReplayDifference> differences = [];
    private readonly List<string> gaps = [];
    private RecordedSensors sensors;
    private RackControl? control;
    private Moment? from;
    private Moment at;
    private bool hasScanned;
    private bool isTakenUp;
    private bool isCertain;
    private bool areAlarmsCertain;
    private long scans;
    private long commands;
    private long eventCount;
    private long otherWords;
    private long sameMemories;
    private int sameInARow;
    private long differenceCount;
    private Duration settling;

    private RunReplay(Site site, PartNames names)
    {
        this.site = site;
        match = new SiteMatch(names, site);
        readings = new Readings(site);
        sensors = new RecordedSensors(site, match);
        recorded = new SwitchState?[site.Loads.Length];
        differs = new bool[site.Loads.Length];
    }

    /// <summary>Replays a run.</summary>
    /// <param name="site">Its site, from the rack file that is on record with it.</param>
    /// <param name="run">The run.</param>
    public static ReplayedRun Of(Site site, RecordedRun run)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(run);
        var replay = new RunReplay(site, run.Facts?.Names ?? PartNames.Of(site));
        foreach (var step in RecordSteps.Of(run))
        {
            replay.Take(step);
        }

        return replay.Result(run.Number);
    }

    void IEventSink.Take(ControlEvent happened) => events.Add(happened);

    private void Take(RecordStep step)
    {
        switch (step)
        {
            case Loses { What: var what }:
                gaps.Add(from is null ? what : $"{what} after {LogText.LocalTime(site, at.Wall)}");
                control = null;
                break;
            case TakesCharge { Page: var page, State: var state }:
                Begin(page, state);
                break;
            case Remembers { Page: var page, State: var state }:
                Compare(control!, page, state);
                break;
            case Scans { Scan: var scan }:
                Replay(control!, scan);
                break;
        }
    }

    private void Begin(RecordedPage page, RecordedState state)
    {
        at = page.At;
        from ??= at;

        // A start may be slow, and until its first scan nothing is driven.
        hasScanned = false;
        control = new RackControl(site, at, state.Memory);
        areAlarmsCertain = isCertain = page.Kind == PageKind.Starts;
        isTakenUp = !isCertain;
        sameInARow = 0;
        sensors = new RecordedSensors(site, match);
        sensors.Note(state.Readings, at.Monotonic);
        Array.Clear(recorded);
        Array.Clear(differs);
        for (var load = 0; load < state.Commands.Length; load++)
        {
            Tell(load, state.Commands[load]);
        }
    }

    /// <summary>What is remembered is nearly all that a controller goes by at a quiet moment; where that and all commands are the same
    /// at two checkpoints in a row, the rest (such as what loads were measured to draw) is taken to be. Alarms decide nothing: where only
    /// those differ, commands are held against the record and events are not.</summary>
    private void Compare(RackControl running, RecordedPage page, RecordedState state)
    {
        var memory = running.Save();
        var others = MemoryMatch.Differing(memory, state.Memory, isTakenUp).ToList();
        var isSame = others.TrueForAll(MemoryMatch.IsOfAlarm) && !differs.Contains(true);
        if (isCertain && others.Find(key => areAlarmsCertain || !MemoryMatch.IsOfAlarm(key)) is { } other)
        {
            Differ(new ReplayDifference(
                page.At, other, MemoryMatch.Words(state.Memory, other), MemoryMatch.Words(memory, other), []));
        }

        sameMemories += isSame ? 1 : 0;
        sameInARow = isSame ? sameInARow + 1 : 0;
        isCertain |= sameInARow >= SameToBeCertain;
        areAlarmsCertain |= isCertain && isSame && others.Count == 0;
    }

    private void Replay(RackControl running, RecordedScan scan)
    {
        while (hasScanned && ReplayPace.Before(scan, running, at) is { } due)
        {
            Scan(running, new RecordedScan(due, ScanConditions.Good, [], [], [], null));
        }

        scans++;
        hasScanned = true;
        Scan(running, scan);
    }

    private void Scan(RackControl running, RecordedScan scan)
    {
        settling += isCertain ? Duration.Zero : scan.At.Monotonic - at.Monotonic;
        at = scan.At;
        sensors.Note(scan.Readings, at.Monotonic);
        sensors.Fill(readings, at.Monotonic);
        events.Clear();
        OperatorRequest[] requests = [.. scan.Requests.Select(match.Request).OfType<OperatorRequest>()];
        var told = running.Scan(at, readings, scan.Conditions, requests, this);
        foreach (var command in scan.Commands)
        {
            Tell(command.Load, command.State);
        }

        commands += isCertain ? Math.Max(scan.Commands.Length, events.Count(happened => happened.Kind == EventKind.Load)) : 0;
        var before = differenceCount;
        Compare(running, told);
        if (areAlarmsCertain && differenceCount == before)
        {
            Compare(scan.Events);
        }
    }

    private void Tell(int load, SwitchState state)
    {
        if (match.Load(load) is { } known)
        {
            recorded[known.Index] = state;
        }
    }

    private void Compare(RackControl running, RelayCommands told)
    {
        foreach (var load in site.Loads)
        {
            var isOther = recorded[load.Id.Index] is { } state && state != told[load.Id];
            if (isOther && !differs[load.Id.Index] && isCertain)
            {
                Differ(new ReplayDifference(
                    at, load.Name, Words(recorded[load.Id.Index]!.Value), Words(told[load.Id]),
                    ReplayWords.Of(running.Why()[load.Id.Index])));
            }

            differs[load.Id.Index] = isOther;
        }
    }

    private void Compare(EventsDigest? then)
    {
        var now = EventsDigest.Of(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(events));
        eventCount += Math.Max(then?.Count ?? 0, now?.Count ?? 0);
        if (then?.Count != now?.Count || then?.What != now?.What)
        {
            Differ(new ReplayDifference(
                at, "events", Words(then?.Count ?? 0), Words(now?.Count ?? 0),
                [.. events.Select(happened => $"{happened.Subject}: {happened.What}, because {happened.Because}")]));
        }
        else if (then?.Because != now?.Because)
        {
            otherWords++;
        }
    }

    private void Differ(ReplayDifference difference)
    {
        differenceCount++;
        if (differences.Count < MostDifferences)
        {
            differences.Add(difference);
        }
    }

    private static string Words(SwitchState state) => state == SwitchState.On ? "on" : "off";

    private static string Words(int count) => count == 0 ? "nothing happened" : count == 1 ? "1 event" : $"{count} events";

    private ReplayedRun Result(long number) => new()
    {
        Number = number,
        From = from,
        Until = scans > 0 ? at : null,
        Scans = scans,
        Commands = commands,
        Events = eventCount,
        OtherWords = otherWords,
        SameMemories = sameMemories,
        Settling = settling,
        Differences = [.. differences],
        DifferenceCount = differenceCount,
        Gaps = [.. gaps],
    };
}
