using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// Keeps what happens. The scan thread hands over and goes on; a thread of its own commits. What that promises: everything
/// is handed over before the relays it explains move, is on its way to the disk as soon as they were told, and is committed (FULL) as
/// soon as the disk takes it, well within one scan on a disk that works. A <c>kill -9</c> or power cut can lose at most what the disk had
/// not yet taken. A disk that is full or broken holds up neither the scan nor the interlocks: what happens is kept in
/// memory, an alarm says so, and writing is tried again.
/// </summary>
internal sealed class Journal : IScanListener, IRecordingSink, IDisposable
{
    /// <summary>How long it sleeps with nothing to write. Then it looks whether its file is still there; each look is as dear as a scan, so
    /// there are few.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan RetryEvery = TimeSpan.FromSeconds(5);

    /// <summary>How long samples, the record and signs of life that are not urgent wait for each other, unless an event takes the record
    /// along. Every commit writes whole pages of a card that wears: one every few seconds makes hundreds of megabytes a day. What a
    /// restart does not know of these minutes it takes for a pump's rest, or for time since a flood, that has yet to pass.</summary>
    private static readonly Duration QuietEvery = Duration.FromMinutes(20);

    private static readonly Duration SamplesKept = Duration.FromDays(90);
    private static readonly Duration RecordKept = Duration.FromDays(90);

    /// <summary>A hundred days at 5 MB. Whatever happens, the record takes no card's last room.</summary>
    private const long MostBytes = 500_000_000;

    private readonly string path;
    private readonly IScanClock clock;
    private readonly ControllerAlarms alarms;
    private readonly JournalQueue queue = new();
    private readonly SampleThinning thinning;
    private readonly DayKeeper days;
    private readonly AutoResetEvent kept = new(false);
    private readonly Thread thread;
    private readonly RunFacts facts;
    private JournalOpening opening;
    private JournalFile? file;
    private long? recordedAs;
    private MonotonicTime quietDue;
    private MonotonicTime forgetDue;
    private long committed;
    private volatile bool stopping;
    private volatile bool isQuietDue;
    private volatile bool lostPages;

    /// <summary>Takes over a journal that was opened.</summary>
    /// <param name="path">Its file, for opening it again after trouble.</param>
    /// <param name="opening">What came of opening it.</param>
    /// <param name="site">The site whose sensors are sampled.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="alarms">Who is told of trouble.</param>
    /// <param name="facts">What the run is driven by, for its record.</param>
    public Journal(
        string path, JournalOpening opening, Site site, IScanClock clock, ControllerAlarms alarms, RunFacts facts)
    {
        this.path = path;
        this.facts = facts;
        this.clock = clock;
        this.alarms = alarms;
        this.opening = opening;
        file = opening.File;
        thinning = new SampleThinning(site);
        days = new DayKeeper(path, site, alarms);
        thread = new Thread(Run) { Name = "journal", IsBackground = true };
    }

    /// <summary>How many events are on the disk for good.</summary>
    public long Committed => Interlocked.Read(ref committed);

    /// <summary>Set when more events are.</summary>
    public WaitHandle Kept => kept;

    /// <summary>What sensors said that is not in the file yet, oldest first.</summary>
    public IReadOnlyList<Sample> Unwritten => queue.LookAtSamples();

    /// <summary>Begins to write.</summary>
    public void Start() => thread.Start();

    /// <inheritdoc/>
    public void Happened(ControlEvent[] events, ControlMemory? memory) => queue.Add(new JournalEntry(events, memory));

    /// <inheritdoc/>
    public void StillAlive(ControlMemory memory, bool isUrgent) => queue.Add(memory, isUrgent);

    /// <inheritdoc/>
    public void GoOn()
    {
        if (isQuietDue)
        {
            isQuietDue = false;
            queue.Wake();
        }
        else
        {
            queue.WakeIfUrgent();
        }
    }

    /// <inheritdoc/>
    public void Sampled(in Moment now, Readings readings)
    {
        thinning.Offer(now, readings, queue);
        isQuietDue = now.Monotonic >= quietDue;
    }

    /// <inheritdoc/>
    public bool TryTake(PageBytes page)
    {
        if (lostPages)
        {
            lostPages = false;
            return false;
        }

        return queue.TryAdd(page);
    }

    /// <summary>Writes what waits and ends.</summary>
    /// <param name="patience">How long to wait for the disk.</param>
    /// <returns>Whether everything was written.</returns>
    public bool Stop(TimeSpan patience)
    {
        stopping = true;
        queue.Wake();
        return thread.Join(patience) && queue.TakeEntries().Count == 0;
    }

    /// <summary>A writer that a dead disk holds keeps its file until the process ends; the stop must not wait for it. Who waits for
    /// <see cref="Kept"/> may outlast the journal, so that is left to the process.</summary>
    public void Dispose()
    {
        if (!thread.IsAlive)
        {
            file?.Dispose();
            queue.Dispose();
        }
    }

    private void Run()
    {
        while (!stopping)
        {
            queue.Wait(Patience);
            if (!TryWrite(everything: false) && !stopping)
            {
                queue.Wait(RetryEvery);
            }
        }

        TryWrite(everything: true);
    }

    private bool TryWrite(bool everything)
    {
        var entries = queue.TakeEntries();
        var isQuietDue = everything || queue.IsFilling || clock.Now().Monotonic >= quietDue;
        var pages = entries.Count > 0 || isQuietDue ? queue.TakePages() : [];
        try
        {
            HoldToItsFile();
            file ??= Reopen();
            var run = recordedAs ??= BeginRecord(file);
            if (entries.Count > 0)
            {
                file.WriteLasting(entries, pages, run);
                Interlocked.Add(ref committed, entries.Sum(entry => entry.Events.Length));
                (entries, pages) = ([], []);
                kept.Set();
            }

            WriteQuietly(file, run, pages, isQuietDue);
            pages = [];
            alarms.Clear(ControllerTrouble.JournalUnwritable);
            return true;
        }
        catch (Exception e)
        {
            // Whatever it is, the record must not take the rack down with it.
            queue.PutBack(entries);
            queue.PutBack(pages);
            file?.Dispose();
            file = null;
            alarms.Raise(ControllerTrouble.JournalUnwritable, $"the journal cannot be written: {e.Message}");
            if (queue.EventsLost > 0)
            {
                alarms.Raise(
                    ControllerTrouble.EventsLost, $"{queue.EventsLost} events found no room while the journal could not be written");
            }

            return false;
        }
    }

    private void WriteQuietly(JournalFile open, long run, List<PageBytes> pages, bool isDue)
    {
        var alive = queue.TakeSignOfLife(onlyUrgent: !isDue);
        var samples = isDue ? queue.TakeSamples() : [];
        if (alive is not null || samples.Count > 0 || pages.Count > 0)
        {
            open.WriteQuietly(alive, samples, pages, run);
        }

        var now = clock.Now();
        if (isDue)
        {
            quietDue = now.Monotonic + QuietEvery;
            open.ForgetRecording(now.WallTrusted ? now.Wall - RecordKept : null, MostBytes);
            days.Follow(now);
        }

        if (days.Take() is { Count: > 0 } sums)
        {
            open.WriteDays(sums);
        }

        if (now.WallTrusted && now.Monotonic >= forgetDue)
        {
            forgetDue = now.Monotonic + Duration.FromDays(1);
            open.ForgetSamples(now.Wall - SamplesKept);
        }
    }

    private long BeginRecord(JournalFile open)
    {
        open.WriteRun(open.Run, facts);
        return open.Run;
    }

    /// <summary>A file that was deleted takes everything and keeps nothing.</summary>
    private void HoldToItsFile()
    {
        if (file is not null && !File.Exists(path))
        {
            alarms.Raise(ControllerTrouble.JournalSetAside, $"somebody deleted the journal {path} while the rack was driven");
            (recordedAs, lostPages) = (null, true);
            throw new IOException($"{path} is gone");
        }
    }

    /// <summary>Opens the journal again after trouble; one that has become corrupt meanwhile is put aside.</summary>
    private JournalFile Reopen()
    {
        var again = opening.Again(path, clock.Now().Wall);
        if (again.SetAside is { } setAside)
        {
            alarms.Raise(ControllerTrouble.JournalSetAside, setAside);

            // The record goes on in the new file, which does not have its beginning.
            (recordedAs, lostPages) = (null, true);
        }

        // Whatever could not be read at the start is not known any better because the disk failed again.
        opening = again.File is null && again.IsUnread ? opening : again;
        return again.File ?? throw new IOException(again.Unusable);
    }
}
