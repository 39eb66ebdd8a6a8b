using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices.Tests;

/// <summary>A run of notices over a journal that a test fills, with a clock that it sets. It may be begun again as after a power
/// cut.</summary>
internal sealed class NoticeRig : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rackcontroller-notices-");
    private readonly Site site;
    private JournalFile journal;

    public NoticeRig(Site site, params FakeWay[] ways)
    {
        this.site = site;
        Ways = ways;
        journal = JournalFile.Open(JournalPath);
        Run = Begin();
        Step();
    }

    public FakeWay[] Ways { get; set; }

    public StillClock Clock { get; } = new(Cellar.Noon);

    public bool IsAlive { get; set; } = true;

    public List<string> Log { get; } = [];

    public NoticesRun Run { get; private set; }

    public string KeptPath => Path.Combine(folder.FullName, "notices.json");

    public NoticesStatus Status => NoticesStatus.Read(KeptPath)!;

    private string JournalPath => Path.Combine(folder.FullName, "journal.db");

    public void Happens(params ControlEvent[] events) => journal.WriteLasting([new JournalEntry(events, null)], [], journal.Run);

    public void Alarms(string key, AlarmState state, string because = "of a test") =>
        Happens(Cellar.Alarm(key, state, Clock.Now, because));

    public void Step() => Run.Step(CancellationToken.None);

    /// <summary>Goes on for a while, looking every five seconds.</summary>
    public void Pass(Duration length)
    {
        for (var end = Clock.Now + length; Clock.Now < end;)
        {
            Clock.Now += Duration.FromSeconds(5);
            Step();
        }
    }

    /// <summary>Begins again from what is on the disk.</summary>
    public void PowerCut() => Run = Begin();

    /// <summary>Puts the journal aside and begins one anew.</summary>
    public void LoseJournal()
    {
        journal.Dispose();
        File.Move(JournalPath, JournalPath + ".aside");
        journal = JournalFile.Open(JournalPath);
    }

    public void Dispose()
    {
        journal.Dispose();
        folder.Delete(recursive: true);
    }

    private NoticesRun Begin() => new(site, new NoticeParts(
        new NoticesFile(KeptPath), new JournalFollower(JournalPath), [.. Ways], null, () => IsAlive, Clock, Log.Add));
}
