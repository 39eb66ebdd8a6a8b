using NodaTime;
using RackController.Bench;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Service.Tests;

/// <summary>The service's own scan loop and journal on a simulated site, in a time that the test moves; and the replay of what it
/// leaves.</summary>
internal sealed class RecordedService : IScanListener, IRecordingSink, IWatchdog, IRackIo, IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    private readonly Site site;
    private readonly string path;
    private readonly SimulatedSite plant;
    private readonly RequestQueue requests = new();
    private Journal? journal;
    private ScanLoop? loop;

    public RecordedService(Site site, string path, PlantStart found)
    {
        this.site = site;
        this.path = path;
        plant = new SimulatedSite(site, found with { At = Clock.Now().Monotonic });
    }

    public StillClock Clock { get; } = new();

    public IoOutcome Inputs { get; set; } = IoOutcome.Ok;

    public IoOutcome Outputs { get; set; } = IoOutcome.Ok;

    /// <summary>Every change of a command that the rack was given, in the runs so far.</summary>
    public long CommandsGiven { get; private set; }

    public void Inject(Fault fault) => plant.Inject(fault);

    public void Ask(OperatorRequest request) => requests.TryAdd(request);

    public void Boot()
    {
        var opening = JournalOpening.Open(path, Clock.Now().Wall);
        var alarms = new ControllerAlarms(Clock);
        var facts = Happenings.Facts with { Names = PartNames.Of(site) };
        journal = new Journal(path, opening, site, Clock, alarms, facts);
        journal.Start();
        var start = Clock.Now();
        var control = new RackControl(site, start, opening.Memory);
        var recording = new ScanRecording(new ScanRecorder(control, start, opening.Memory), this);
        var board = new StatusBoard(alarms, new RecentEvents(), new DueUpkeep());
        loop = new ScanLoop(this, control, Clock, new ScanOutlets(requests, recording, [journal, this], board, [this]));
    }

    public void Run(Duration length)
    {
        var end = Clock.Now().Monotonic + length;
        while (Clock.Now().Monotonic < end)
        {
            loop!.ScanOnce();
            Clock.SleepUntil(loop.NextDue);
        }
    }

    /// <summary>The process ends, with everything written.</summary>
    public void End()
    {
        Assert.True(journal!.Stop(Patience));
        journal.Dispose();
        journal = null;
        Clock.Advance(Duration.FromSeconds(3));
    }

    /// <summary>Decides again what the journal has on record.</summary>
    public IReadOnlyList<ReplayedRun> Replay()
    {
        using var record = JournalRecord.Open(path);
        List<ReplayedRun> runs = [.. record.Runs().Select(run => RunReplay.Of(site, run))];
        Assert.Null(record.Damage);
        return runs;
    }

    public IoOutcome Read(MonotonicTime now, Readings readings) => Inputs.IsOk ? plant.Read(now, readings) : Inputs;

    public IoOutcome Write(MonotonicTime now, RelayCommands commands) => Outputs.IsOk ? plant.Write(now, commands) : Outputs;

    public void Happened(ControlEvent[] events, ControlMemory? memory) =>
        CommandsGiven += events.Count(happened => happened.Kind == EventKind.Load);

    /// <summary>Time that a test moves can outrun any disk; here it waits for it.</summary>
    public bool TryTake(PageBytes page) => SpinWait.SpinUntil(() => journal!.TryTake(page), Patience);

    public void GoodScan(MonotonicTime now)
    {
    }

    public void Dispose()
    {
        journal?.Stop(Patience);
        journal?.Dispose();
        Clock.Dispose();
    }
}
