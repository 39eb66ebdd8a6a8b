using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Puts on record what Control was told, so that it can be run again to the same commands and events at the same moments. Control itself
/// says which scans could matter (<see cref="RackControl.NextChange"/>, <see cref="RackControl.Levels"/>); every one of those is put
/// down with its exact moment, and so is one scan a minute with all measured values, for whoever asks what other limits would have done.
/// A scan that is not put down allocates nothing. Not safe for two threads.
/// </summary>
public sealed class ScanRecorder
{
    /// <summary>How often all measured values are put on record.</summary>
    public static readonly Duration SampleEvery = Duration.FromMinutes(1);

    /// <summary>How often what the controller remembers is put on record, at a quiet moment.</summary>
    public static readonly Duration CheckpointEvery = Duration.FromHours(24);

    /// <summary>So far from any flood a moment is quiet: what is remembered is then nearly all that a controller goes by.</summary>
    private static readonly Duration quiet = Duration.FromHours(1);

    /// <summary>Where floods follow one another more closely, a moment between two of them has to do after so long.</summary>
    private static readonly Duration mostPatience = Duration.FromHours(6);

    /// <summary>A page is handed over when it has grown to this.</summary>
    private const int LargePage = 12 * 1024;

    private readonly RackControl control;
    private readonly PageWriter page = new();
    private readonly KeptReading[] kept;
    private readonly RelayCommands told;
    private Moment begins;
    private Moment last;
    private MonotonicTime nextChange;
    private MonotonicTime sampleDue;
    private MonotonicTime checkpointDue;
    private MonotonicTime lastPumping;
    private long number;
    private bool isOpen = true;

    /// <summary>Begins the record of a run.</summary>
    /// <param name="control">The controller, before its first scan.</param>
    /// <param name="start">The moment at which it took charge.</param>
    /// <param name="memory">What it was given to remember.</param>
    public ScanRecorder(RackControl control, Moment start, ControlMemory? memory)
    {
        ArgumentNullException.ThrowIfNull(control);
        this.control = control;
        var levels = control.Levels.ToLookup(level => level.Sensor, level => level.Value);
        kept = [.. control.Site.Sensors.Select(sensor => new KeptReading(sensor, [.. levels[sensor.Id].Distinct().Order()]))];
        told = new RelayCommands(control.Site);
        (last, begins) = (start, start);
        nextChange = control.NextChange;
        sampleDue = start.Monotonic;
        checkpointDue = start.Monotonic + CheckpointEvery;
        lastPumping = start.Monotonic;
        page.Begin(PageKind.Starts, number, start);
        page.State(memory, told, Kept());
    }

    /// <summary>Whether it is time to hand over a page: something happened, a minute has passed, or it has grown large.</summary>
    public bool IsPageDue { get; private set; }

    /// <summary>Takes note of a scan that was made.</summary>
    /// <param name="now">When it was.</param>
    /// <param name="readings">What Control read.</param>
    /// <param name="conditions">How the scan went.</param>
    /// <param name="requests">What people asked for.</param>
    /// <param name="commands">What came of it.</param>
    /// <param name="events">What happened.</param>
    public void Note(
        in Moment now, Readings readings, in ScanConditions conditions, ReadOnlySpan<OperatorRequest> requests,
        RelayCommands commands, ReadOnlySpan<ControlEvent> events)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(commands);
        var isClockSteady = now.WallTrusted == last.WallTrusted && now.Wall - last.Wall == now.Monotonic - last.Monotonic;
        var isSampleDue = now.Monotonic >= sampleDue;
        var isDue = now.Monotonic >= nextChange;
        var isNews = !isClockSteady || !requests.IsEmpty || !events.IsEmpty || isSampleDue || isDue || IsWorthNoting(conditions);
        for (var sensor = 0; sensor < kept.Length && !isNews; sensor++)
        {
            isNews = kept[sensor].IsNews(readings[new SensorId(sensor)], now.Monotonic);
        }

        if (isNews && isOpen)
        {
            Put(now, isClockSteady, readings, conditions, requests, commands, EventsDigest.Of(events), isSampleDue || isDue);
        }

        (last, nextChange) = (now, control.NextChange);
        sampleDue = isSampleDue ? now.Monotonic + SampleEvery : sampleDue;
        if (!isOpen && isSampleDue)
        {
            Resume(readings, commands);
        }

        IsPageDue = isOpen && (!events.IsEmpty || isSampleDue || page.Length > LargePage);
    }

    /// <summary>Takes the page and begins the next.</summary>
    public PageBytes TakePage()
    {
        var taken = new PageBytes(begins, page.ToArray());
        number++;
        begins = last;
        if (last.Monotonic >= checkpointDue && IsQuiet())
        {
            checkpointDue = last.Monotonic + CheckpointEvery;
            page.Begin(PageKind.Checkpoint, number, last);
            page.State(control.Save(), told, Kept());
        }
        else
        {
            page.Begin(PageKind.Continues, number, last);
        }

        return taken;
    }

    /// <summary>The page that was taken last is lost. The record has a gap, and goes on within a minute from what the controller
    /// remembers then.</summary>
    public void LosePage() => isOpen = false;

    private bool IsQuiet()
    {
        var isIdle = control.Site.Racks.All(rack => control.FloodPhase(rack.Id) == FloodPhase.Idle);
        var names = control.Site.Racks.Select(rack => rack.Name);
        return isIdle && (last.Monotonic >= checkpointDue + mostPatience
            || (last.Monotonic >= lastPumping + quiet
                && !control.DueNext().Any(due => names.Contains(due.Subject) && due.At < last.Wall + quiet)));
    }

    private static bool IsLate(in ScanConditions conditions, ScanTiming timing) => conditions.LateBy >= timing.Period;

    private bool IsWorthNoting(in ScanConditions conditions) => !conditions.Io.IsOk || IsLate(conditions, control.Site.Scan);

    private void Resume(Readings readings, RelayCommands commands)
    {
        isOpen = true;
        begins = last;

        // Soon, because until then a replay cannot know whether it is in the same state.
        checkpointDue = last.Monotonic + quiet;
        told.CopyFrom(commands);
        for (var sensor = 0; sensor < kept.Length; sensor++)
        {
            kept[sensor].Keep(readings[new SensorId(sensor)], last.Monotonic);
        }

        page.Begin(PageKind.Resumes, number, last);
        page.State(control.Save(), told, Kept());
    }

    private void Put(
        in Moment now, bool isClockSteady, Readings readings, in ScanConditions conditions, ReadOnlySpan<OperatorRequest> requests,
        RelayCommands commands, EventsDigest? events, bool isLookedAt)
    {
        // What is due may look at any value or its time, and words may tell it.
        var putsAll = isLookedAt || events is not null;
        var (readingCount, commandCount) = (Count(readings, now, putsAll), Count(commands));
        var putsConditions = IsWorthNoting(conditions);
        page.Scan(now, (byte)(
            (isClockSteady ? 0 : PageWriter.HasClock) | (putsConditions ? PageWriter.HasConditions : 0)
            | (requests.IsEmpty ? 0 : PageWriter.HasRequests) | (readingCount > 0 ? PageWriter.HasReadings : 0)
            | (commandCount > 0 ? PageWriter.HasCommands : 0) | (events is null ? 0 : PageWriter.HasEvents)));
        if (putsConditions)
        {
            page.Conditions(IsLate(conditions, control.Site.Scan) ? conditions : conditions with { LateBy = Duration.Zero });
        }

        Put(requests);
        Put(readings, readingCount, now, putsAll);
        Put(commands, commandCount, now);
        if (events is { } digest)
        {
            page.Events(digest);
        }
    }

    private void Put(ReadOnlySpan<OperatorRequest> requests)
    {
        if (!requests.IsEmpty)
        {
            page.Count(requests.Length);
        }

        foreach (var request in requests)
        {
            page.Request(request);
        }
    }

    private void Put(Readings readings, int count, in Moment now, bool putsAll)
    {
        if (count == 0)
        {
            return;
        }

        page.Count(count);
        for (var sensor = 0; sensor < kept.Length; sensor++)
        {
            ref readonly var reading = ref readings[new SensorId(sensor)];
            if (IsPut(sensor, reading, now, putsAll))
            {
                page.Reading(sensor, reading);
                kept[sensor].Keep(reading, now.Monotonic);
            }
        }
    }

    private void Put(RelayCommands commands, int count, in Moment now)
    {
        if (count == 0)
        {
            return;
        }

        page.Count(count);
        for (var load = 0; load < commands.Count; load++)
        {
            var id = new LoadId(load);
            if (commands[id] != told[id])
            {
                lastPumping = control.Site[id].Kind == LoadKind.Pump ? now.Monotonic : lastPumping;
                page.Command(load, commands[id]);
                told[id] = commands[id];
            }
        }
    }

    private int Count(Readings readings, in Moment now, bool putsAll)
    {
        var count = 0;
        for (var sensor = 0; sensor < kept.Length; sensor++)
        {
            count += IsPut(sensor, readings[new SensorId(sensor)], now, putsAll) ? 1 : 0;
        }

        return count;
    }

    private int Count(RelayCommands commands)
    {
        var count = 0;
        for (var load = 0; load < commands.Count; load++)
        {
            count += commands[new LoadId(load)] != told[new LoadId(load)] ? 1 : 0;
        }

        return count;
    }

    private bool IsPut(int sensor, in Reading reading, in Moment now, bool putsAll) =>
        kept[sensor].IsNews(reading, now.Monotonic) || (putsAll && kept[sensor].IsOther(reading, now.Monotonic));

    private Reading[] Kept() => [.. kept.Select(each => each.At(last.Monotonic))];
}
