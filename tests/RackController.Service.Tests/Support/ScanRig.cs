using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

/// <summary>A scan loop on a recording rack and a still clock; what it tells is collected.</summary>
internal sealed class ScanRig : IScanListener, IRecordingSink, IWatchdog, IDisposable
{
    public ScanRig(Site? site = null, ControlMemory? memory = null)
    {
        Site = site ?? Sites.OneRack();
        Rack = new RecordingRack(Site);
        var alarms = new ControllerAlarms(Clock);
        Board = new StatusBoard(alarms, new RecentEvents(), new DueUpkeep());
        var start = Clock.Now();
        Control = new RackControl(Site, start, memory);
        var recording = new ScanRecording(new ScanRecorder(Control, start, memory), this);
        Loop = new ScanLoop(Rack, Control, Clock, new ScanOutlets(Requests, recording, [this], Board, [this]));
    }

    public Site Site { get; }

    public StillClock Clock { get; } = new();

    public RecordingRack Rack { get; }

    public RackControl Control { get; }

    public RequestQueue Requests { get; } = new();

    public StatusBoard Board { get; }

    public ScanLoop Loop { get; }

    public List<ControlEvent> Events { get; } = [];

    public List<ControlMemory> Memories { get; } = [];

    public List<PageBytes> Pages { get; } = [];

    /// <summary>How many signs of life were urgent.</summary>
    public int UrgentSigns { get; private set; }

    /// <summary>How many scans were good enough to feed the watchdog.</summary>
    public int GoodScans { get; private set; }

    public void Happened(ControlEvent[] events, ControlMemory? memory)
    {
        Events.AddRange(events);
        Remember(memory);
    }

    public bool TryTake(PageBytes page)
    {
        Pages.Add(page);
        return true;
    }

    public void StillAlive(ControlMemory memory, bool isUrgent)
    {
        Remember(memory);
        UrgentSigns += isUrgent ? 1 : 0;
    }

    public void GoodScan(MonotonicTime now) => GoodScans++;

    /// <summary>Scans for a while, each scan when it is due.</summary>
    public void Run(Duration length)
    {
        var end = Clock.Now().Monotonic + length;
        while (Clock.Now().Monotonic < end)
        {
            ScanOnce();
        }
    }

    public void ScanOnce()
    {
        Loop.ScanOnce();
        Clock.SleepUntil(Loop.NextDue);
    }

    public void Dispose() => Clock.Dispose();

    private void Remember(ControlMemory? memory)
    {
        if (memory is not null)
        {
            Memories.Add(memory);
        }
    }
}
