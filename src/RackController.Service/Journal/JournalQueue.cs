using RackController.Control;

namespace RackController.Service;

/// <summary>
/// What waits to be written. Samples have little room and the oldest go first; events have so much that only a disk
/// that stays unwritable for weeks fills it, and then the newest are counted as lost instead of kept. Pages of the record
/// have room for a day; then the newest are refused. Of what is to be remembered only the newest waits.
/// </summary>
internal sealed class JournalQueue : IDisposable
{
    /// <summary>About 30 MB of events.</summary>
    public const int MostEvents = 100_000;

    private const int MostSamples = 5_000;

    /// <summary>More than a day of the record of an ordinary rack.</summary>
    private const int MostPageBytes = 2_000_000;

    /// <summary>An hour of the record of an ordinary rack, or minutes of a busy one.</summary>
    private const int ManyPageBytes = 50_000;

    private readonly Lock gate = new();
    private readonly AutoResetEvent arrived = new(false);
    private readonly Queue<Sample> samples = new(512);
    private List<JournalEntry> entries = [];
    private List<PageBytes> pages = [];
    private int pageBytes;
    private ControlMemory? memory;
    private ControlMemory? signOfLife;
    private bool isSignUrgent;
    private int eventCount;

    /// <summary>How many events found no room.</summary>
    public long EventsLost { get; private set; }

    /// <summary>Whether so much of the record or so many samples wait that they should be written.</summary>
    public bool IsFilling
    {
        get
        {
            lock (gate)
            {
                return IsFillingNow;
            }
        }
    }

    /// <summary>Adds what a scan handed over.</summary>
    public void Add(JournalEntry entry)
    {
        lock (gate)
        {
            if (eventCount + entry.Events.Length > MostEvents)
            {
                EventsLost += entry.Events.Length;
                entry = entry with { Events = [] };
            }

            if (entry.Events.Length > 0)
            {
                eventCount += entry.Events.Length;
                entries.Add(entry with { Memory = null });
            }

            memory = entry.Memory ?? memory;
            signOfLife = entry.Memory is null ? signOfLife : null;
        }
    }

    /// <summary>Adds a sign of life; the newest counts.</summary>
    public void Add(ControlMemory alive, bool isUrgent)
    {
        lock (gate)
        {
            signOfLife = alive;
            isSignUrgent = isUrgent;
        }
    }

    /// <summary>Adds a sample; the oldest makes room for it.</summary>
    public void Add(in Sample sample)
    {
        lock (gate)
        {
            if (samples.Count == MostSamples)
            {
                samples.Dequeue();
            }

            samples.Enqueue(sample);
        }
    }

    /// <summary>Adds a page of the record.</summary>
    /// <returns>Whether there was room for it.</returns>
    public bool TryAdd(PageBytes page)
    {
        lock (gate)
        {
            if (pageBytes + page.Body.Length > MostPageBytes)
            {
                return false;
            }

            pageBytes += page.Body.Length;
            pages.Add(page);
            return true;
        }
    }

    /// <summary>Waits to be woken, but not for long.</summary>
    /// <returns>Whether it was.</returns>
    public bool Wait(TimeSpan atMost) => arrived.WaitOne(atMost);

    /// <summary>Ends the writer's wait if it should write at once.</summary>
    public void WakeIfUrgent()
    {
        bool isUrgent;
        lock (gate)
        {
            isUrgent = entries.Count > 0 || memory is not null || (signOfLife is not null && isSignUrgent) || IsFillingNow;
        }

        if (isUrgent)
        {
            arrived.Set();
        }
    }

    /// <summary>Ends the writer's wait.</summary>
    public void Wake() => arrived.Set();

    public void Dispose() => arrived.Dispose();

    /// <summary>Takes all entries, the newest memory with the last of them.</summary>
    public List<JournalEntry> TakeEntries()
    {
        lock (gate)
        {
            var taken = entries;
            if (memory is not null)
            {
                taken.Add(new JournalEntry([], memory));
            }

            entries = [];
            memory = null;
            eventCount = 0;
            return taken;
        }
    }

    /// <summary>Puts entries back in front of those that came since.</summary>
    public void PutBack(List<JournalEntry> taken)
    {
        lock (gate)
        {
            memory ??= taken.LastOrDefault(entry => entry.Memory is not null)?.Memory;
            entries = [.. taken.Where(entry => entry.Memory is null), .. entries];
            eventCount = entries.Sum(entry => entry.Events.Length);
        }
    }

    /// <summary>Takes all pages of the record.</summary>
    public List<PageBytes> TakePages()
    {
        lock (gate)
        {
            var taken = pages;
            pages = [];
            pageBytes = 0;
            return taken;
        }
    }

    /// <summary>Puts pages back in front of those that came since, however many those are.</summary>
    public void PutBack(List<PageBytes> taken)
    {
        lock (gate)
        {
            pages = [.. taken, .. pages];
            pageBytes = pages.Sum(page => page.Body.Length);
        }
    }

    private bool IsFillingNow => pageBytes > ManyPageBytes || samples.Count > MostSamples / 2;

    /// <summary>Takes the newest sign of life, if any waits.</summary>
    /// <param name="onlyUrgent">Leaves one that may wait.</param>
    public ControlMemory? TakeSignOfLife(bool onlyUrgent)
    {
        lock (gate)
        {
            if (onlyUrgent && !isSignUrgent)
            {
                return null;
            }

            var taken = signOfLife;
            signOfLife = null;
            return taken;
        }
    }

    /// <summary>The samples that wait, which stay.</summary>
    public List<Sample> LookAtSamples()
    {
        lock (gate)
        {
            return [.. samples];
        }
    }

    /// <summary>Takes all samples.</summary>
    public List<Sample> TakeSamples()
    {
        lock (gate)
        {
            List<Sample> taken = [.. samples];
            samples.Clear();
            return taken;
        }
    }
}
