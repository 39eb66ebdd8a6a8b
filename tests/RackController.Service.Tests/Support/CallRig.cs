using System.Device.Gpio;
using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;
using RackController.Hardware;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

/// <summary>
/// The service from GPIO lines to journal, in virtual time, so that any call it makes can fail while a flood runs. Whatever fails, no
/// pump line may be driven for longer than the pump's maximum run.
/// </summary>
internal sealed class CallRig : IScanListener, IWatchdog, IDisposable
{
    public const int LowFloatLine = 16;
    private const string RelayChip = "relays";
    private const string ContactChip = "contacts";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly TemporaryFolder folder = new();
    private readonly GpioRackIo io;
    private readonly RackControl control;
    private readonly ControllerAlarms alarms;
    private readonly Journal journal;
    private readonly RequestQueue requests = new();
    private readonly ScanLoop loop;
    private MonotonicTime? drivenSince;
    private long events;

    public CallRig()
    {
        // No flood but those that are asked for.
        Site = WithLines(Sites.OneRack().WithSchedule(
            schedule => schedule with { Floods = schedule.Floods! with { Times = new FloodsAt([new LocalTime(5, 0)]) } }));
        foreach (var sensor in Site.Sensors)
        {
            Contacts.Pull(LowFloatLine + sensor.Id.Index, sensor.HarmfulValue == 0 ? PinValue.High : PinValue.Low);
        }

        Directory.CreateDirectory(Path.GetDirectoryName(JournalPath)!);
        io = new GpioRackIo(Site, label => (label == RelayChip ? Relays : Contacts).Open());
        alarms = new ControllerAlarms(Clock);
        journal = new Journal(JournalPath, JournalOpening.Open(JournalPath, Happenings.Noon), Site, Clock, alarms, Happenings.Facts);
        journal.Start();
        var start = Clock.Now();
        control = new RackControl(Site, start, null);
        var recording = new ScanRecording(new ScanRecorder(control, start, null), journal);
        var board = new StatusBoard(alarms, new RecentEvents(), new DueUpkeep());
        IScanListener[] listeners = [journal, this];
        alarms.TellTo(listeners);
        loop = new ScanLoop(io, control, Clock, new ScanOutlets(requests, recording, listeners, board, [this]));
    }

    public Site Site { get; }

    public StillClock Clock { get; } = new();

    public FakeGpioChip Relays { get; } = new(RelayChip);

    public FakeGpioChip Contacts { get; } = new(ContactChip);

    public string JournalPath => folder.File("state/journal.db");

    public int PumpLine => Site.LoadNamed("north/pump").Index;

    /// <summary>Whether the pump's line is driven.</summary>
    public bool IsPumpDriven => Relays.LevelOf(PumpLine) == PinValue.Low;

    public void Happened(ControlEvent[] happened, ControlMemory? memory) => Interlocked.Add(ref events, happened.Length);

    public void GoodScan(MonotonicTime now)
    {
    }

    /// <summary>Scans for a while, and holds the pump's line to its limit.</summary>
    public void Run(Duration length)
    {
        var end = Clock.Now().Monotonic + length;
        while (Clock.Now().Monotonic < end)
        {
            loop.ScanOnce();
            var now = Clock.Now().Monotonic;
            drivenSince = IsPumpDriven ? drivenSince ?? now : null;
            Assert.True(
                !(now - drivenSince > Site.Racks[0].Limits.PumpMaximumRun + Duration.FromSeconds(1)), "the pump ran past its maximum");
            Clock.SleepUntil(loop.NextDue);
        }
    }

    /// <summary>Lets the last flood drain and the pump rest, then asks for a flood until the pump runs.</summary>
    public void Flood()
    {
        Run(Duration.FromMinutes(45));
        Assert.True(requests.TryAdd(new FloodNow("somebody", new RackId(0))));
        Run(Duration.FromMinutes(2));
        Assert.True(IsPumpDriven, "the pump does not run");
    }

    /// <summary>Whether an alarm stands.</summary>
    public bool Stands(string key) =>
        control.Alarms().Concat(alarms.Active()).Any(alarm => alarm.Key == key && alarm.State != AlarmState.ReturnedUnacknowledged);

    /// <summary>Scans until another thread has noticed what there is to notice.</summary>
    public void RunUntil(Func<bool> condition, string what)
    {
        var end = DateTime.UtcNow + Patience;
        while (!condition())
        {
            Assert.True(DateTime.UtcNow < end, $"it did not come about that {what}");
            Run(Duration.FromSeconds(1));
            SpinWait.SpinUntil(condition, millisecondsTimeout: 10);
        }
    }

    /// <summary>Whether everything that happened is in the journal for good.</summary>
    public bool IsKept => journal.Committed == Interlocked.Read(ref events);

    /// <summary>Does something to the journal's database, as another program might.</summary>
    public void Tamper(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={JournalPath};Pooling=False;Default Timeout=20");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    public void Dispose()
    {
        journal.Stop(Patience);
        journal.Dispose();
        io.Dispose();
        Clock.Dispose();
        folder.Dispose();
    }

    private static Site WithLines(Site site) => site with
    {
        Io = new GpioIo(
            [.. site.Loads.Select(load => new RelayLine(load.Id, new GpioLine(RelayChip, load.Id.Index), ActiveLow: true))],
            [.. site.Sensors.Select(sensor => new ContactLine(
                sensor.Id, new GpioLine(ContactChip, LowFloatLine + sensor.Id.Index), ActiveLow: false, LinePull.Up,
                Duration.FromMilliseconds(50)))]),
    };
}
