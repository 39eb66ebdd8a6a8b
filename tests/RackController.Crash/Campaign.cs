namespace RackController.Crash;

/// <summary>One life after the other in the same state folder, each killed at a random moment and judged by its journal. In some the
/// clock is set, in some the disk is full, and between some the tail of the journal is damaged.</summary>
internal sealed class Campaign(Setting setting, string folder, Random random, Tally tally)
{
    /// <summary>A minute and a half for the racks, and so a flood or two.</summary>
    private const double LongestLifeMs = 1500;

    /// <summary>While the runtime starts, the rack file is read, and the journal is opened.</summary>
    private const double LongestStartMs = 1000;

    private const string JournalAlarm = "Alarm controller/journal: ";
    private const string SetAsideAlarm = "Alarm controller/journal-set-aside: ";
    private const string SouthLatches = "Interlock south/high-water: latched";

    private static readonly TimeSpan Day = TimeSpan.FromHours(24);

    private readonly HashSet<JournalEvent> known = [];

    /// <summary>How many events were acknowledged in all lives together.</summary>
    public long Acknowledged { get; private set; }

    /// <summary>A life before all others, long enough for the south rack's first flood: what it leaves to the next is a latch, however slow
    /// the machine.</summary>
    public void LiveUntilLatched()
    {
        using var life = new Life(setting, folder);
        var isLatched = life.WaitUntilItSays(SouthLatches);

        // The first that is heard now may have been on its way before the latch was.
        var isVouchedFor = VouchesAnew(life) && VouchesAnew(life);
        life.Kill();
        tally.Holds("a pump is latched in its first flood", isLatched && isVouchedFor ? null : $"it said {string.Join(" | ", life.Lines)}");
        tally.Holds("there is a latch to keep", Read(folder) is { } left && MemoryJudge.HasLatch(left) ? null : "none was remembered");
    }

    /// <summary>One life, and what is done to what it leaves.</summary>
    /// <param name="round">Its number, from 1.</param>
    public void Run(int round)
    {
        Learn(Read(folder));
        if (round % 5 == 0)
        {
            Console.WriteLine($"round {round}: {Damage.ToTail(folder, random)}");
        }

        var inheritance = new Inheritance(Read(folder), ReadUpToDamage(folder));
        Learn(inheritance.Legible);
        var setAside = SetAside(folder);
        var hadJournal = File.Exists(Path.Combine(folder, "journal.db"));
        using var life = new Life(setting, folder);
        var isReady = Live(round, life);
        life.Kill();
        Acknowledged += life.Acknowledged;

        var isSetAside = SetAside(folder) > setAside;
        var isBroken = hadJournal && inheritance.Sound is null;
        tally.Holds(
            $"round {round} puts a journal aside when it is broken, and only then",
            isSetAside == isBroken || !(isSetAside || isReady) ? null : isBroken ? "it was broken" : "it was sound");
        Judge(round, life, inheritance, hadJournal && isReady);
        if (round % 4 == 2)
        {
            StartOnDamagedCopy(round);
        }
    }

    /// <returns>Whether it came to drive the racks, as far as anybody waited for that.</returns>
    private bool Live(int round, Life life)
    {
        var diesYoung = random.Next(4) == 0 && !setting.Disk.IsFull;
        var isReady = diesYoung || life.WaitUntilReady();
        if (diesYoung)
        {
            Sleep(LongestStartMs);
        }
        else
        {
            Sleep(LongestLifeMs / 2);
            TroubleTheDisk(round, life);
            SetTheClock(round, life);
            Sleep(LongestLifeMs / 2);
        }

        tally.Holds(
            $"round {round} starts and lives",
            life.HasEnded ? $"it ended by itself: {string.Join(" | ", life.Lines)}" : isReady ? null : "it was never ready");
        return isReady && !diesYoung;
    }

    /// <summary>A full disk stays full for one kill and the next start, or for a part of one life.</summary>
    private void TroubleTheDisk(int round, Life life)
    {
        var wasFull = setting.Disk.IsFull;
        if (!wasFull && round % 4 != 0)
        {
            return;
        }

        if (!wasFull)
        {
            setting.Disk.Fill(life);
        }

        tally.Holds(
            $"round {round} tells that the disk is full",
            life.WaitUntilItSays(JournalAlarm + "unacknowledged") ? null : "it raised no alarm");
        if (wasFull || random.Next(2) == 0)
        {
            setting.Disk.Free(life);
            tally.Holds(
                $"round {round} writes once there is room",
                life.WaitUntilItSays(JournalAlarm + "returned") ? null : "its alarm did not return");
        }
    }

    private void SetTheClock(int round, Life life)
    {
        if (random.Next(2) == 0)
        {
            setting.Clock.Step(NextStep());
            tally.Holds(
                $"round {round} notices that its clock was set",
                life.WaitUntilItSays("Clock wall clock: stepped") ? null : "it said nothing");
        }
    }

    /// <summary>A life that was killed before it drove racks may leave a broken journal as it found it, or a rescue half done.</summary>
    private void Judge(int round, Life life, Inheritance inheritance, bool mustBeSound)
    {
        var sound = Read(folder);
        var after = sound ?? (mustBeSound ? null : ReadUpToDamage(folder));
        var events = NewIn(after);
        Learn(after);
        tally.Holds($"round {round} loses nothing acknowledged", StoryJudge.Lost(life.Acknowledged, events));
        tally.Holds(
            $"round {round} loses nothing of earlier lives", after is null && !mustBeSound ? null : inheritance.LostIn(after));
        tally.Holds($"round {round} tells one story", StoryJudge.Difference(life.Lines, events));
        tally.Holds($"round {round} keeps pumps to their limits", FirstOf(PumpJudge.Complaints(events)));
        tally.Holds($"round {round} leaves a sound journal", sound is null && mustBeSound ? "it is broken or gone" : null);
        if (inheritance.Legible is { } before && after is not null)
        {
            tally.Holds($"round {round} keeps latches", FirstOf(MemoryJudge.LatchComplaints(before.Memory, after.Memory, events)));
            tally.Holds($"round {round} keeps run totals", FirstOf(MemoryJudge.TotalComplaints(before, after, events)));
        }
    }

    private void Learn(JournalCopy? journal) => known.UnionWith(journal?.Events ?? []);

    /// <summary>What follows the last event that earlier lives are known for. Before that, a rescue may tell events that damage had hidden
    /// or changed.</summary>
    private IReadOnlyList<JournalEvent> NewIn(JournalCopy? after)
    {
        List<JournalEvent> all = [.. after?.Events ?? []];
        return all[(all.FindLastIndex(known.Contains) + 1)..];
    }

    /// <summary>The journal of this round with a damaged tail, beside the one that goes on.</summary>
    private void StartOnDamagedCopy(int round)
    {
        var copy = Path.Combine(setting.Work, $"damaged-{round}");
        JournalCopy.CopyFiles(folder, copy);
        var damage = Damage.ToTail(copy, random);
        var inheritance = new Inheritance(Read(copy), ReadUpToDamage(copy));
        var isSound = inheritance.Sound is not null;
        using var life = new Life(setting, copy);
        var isReady = life.WaitUntilReady();
        var isTold = isSound || life.WaitUntilItSays(SetAsideAlarm + "unacknowledged");
        life.Kill();
        tally.Holds($"round {round} starts after {damage}", isReady ? null : $"it said {string.Join(" | ", life.Lines)}");
        tally.Holds(
            $"round {round} after {damage} puts the journal aside if it is broken, and tells",
            isSound == (SetAside(copy) == 0) && isTold ? null : $"the copy was {(isSound ? "sound" : "broken")}");
        tally.Holds($"round {round} after {damage} loses no more than that", inheritance.LostIn(Read(copy)));
    }

    /// <summary>A day, or one to twenty minutes, on or back.</summary>
    private TimeSpan NextStep()
    {
        var by = random.Next(2) == 0 ? Day : TimeSpan.FromMinutes(1 + 19 * random.NextDouble());
        return random.Next(2) == 0 ? by : -by;
    }

    private static bool VouchesAnew(Life life)
    {
        var vouchedFor = life.Acknowledged;
        return SpinWait.SpinUntil(() => life.Acknowledged > vouchedFor, Setting.Patience);
    }

    private JournalCopy? Read(string from) => JournalCopy.Read(from, Path.Combine(setting.Work, "copy"));

    private JournalCopy? ReadUpToDamage(string from) => JournalCopy.ReadUpToDamage(from, Path.Combine(setting.Work, "copy"));

    private static int SetAside(string folder) => Directory.GetFiles(folder, "journal-*.db").Length;

    private void Sleep(double atMostMs) => Thread.Sleep(TimeSpan.FromMilliseconds(atMostMs * random.NextDouble()));

    private static string? FirstOf(IEnumerable<string> complaints) => complaints.FirstOrDefault();
}
