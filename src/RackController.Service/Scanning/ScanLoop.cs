using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// One look at the rack after another: inputs, Control, outputs, watchdog. It owns all four, and only the scan thread calls
/// it. A steady scan allocates nothing; whatever has to be told is handed to listeners, which never make it wait.
/// </summary>
internal sealed class ScanLoop
{
    /// <summary>How often what is remembered is handed over although nothing changed, so that a restart knows when the
    /// controller was last alive.</summary>
    public static readonly Duration HeartbeatEvery = Duration.FromSeconds(15);

    /// <summary>How often readings are offered as samples; the journal thins them further.</summary>
    public static readonly Duration SampleEvery = Duration.FromSeconds(1);

    private readonly IRackIo io;
    private readonly RackControl control;
    private readonly IScanClock clock;
    private readonly ScanOutlets outlets;
    private readonly Readings readings;
    private readonly LoadId[] pumps;
    private readonly EventTray tray = new();
    private readonly ScanPace pace;
    private IoOutcome outputs = IoOutcome.Ok;
    private Moment last;
    private long savedVersion;
    private MonotonicTime heartbeatDue;
    private MonotonicTime sampleDue;

    /// <summary>Prepares the first scan.</summary>
    /// <param name="io">The rack.</param>
    /// <param name="control">Who decides.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="outlets">Where requests come from and where everything goes.</param>
    public ScanLoop(IRackIo io, RackControl control, IScanClock clock, ScanOutlets outlets)
    {
        this.io = io;
        this.control = control;
        this.clock = clock;
        this.outlets = outlets;
        readings = new Readings(control.Site);
        pumps = [.. control.Site.Loads.Where(load => load.Kind == LoadKind.Pump).Select(load => load.Id)];
        savedVersion = control.MemoryVersion;
        last = clock.Now();
        pace = new ScanPace(control.Site.Scan, last.Monotonic);
        heartbeatDue = last.Monotonic;
        sampleDue = last.Monotonic;
    }

    /// <summary>When the next scan is due.</summary>
    public MonotonicTime NextDue => pace.NextDue;

    /// <summary>One scan, from inputs to watchdog.</summary>
    public void ScanOnce()
    {
        var now = LaterThanLast(clock.Now());
        pace.Begin(now.Monotonic);

        var inputs = io.Read(now.Monotonic, readings);
        var conditions = new ScanConditions(inputs.IsOk ? outputs : inputs, pace.LateBy);
        var requests = outlets.Requests.TakeAll();
        var commands = control.Scan(now, readings, conditions, requests, tray);

        outlets.Recording.Note(now, readings, conditions, requests, commands, tray.Events);
        var handedOver = HandOver(now, DoesAnyPumpRun(commands));
        outputs = io.Write(now.Monotonic, commands);
        if (handedOver)
        {
            LetListenersGoOn();
        }

        if (outlets.Status.IsAsked)
        {
            outlets.Status.Show(control, now, readings, Health(inputs));
        }

        if (inputs.IsOk && outputs.IsOk && !pace.IsLate)
        {
            foreach (var watchdog in outlets.Watchdogs)
            {
                watchdog.GoodScan(now.Monotonic);
            }
        }
    }

    /// <summary>Hands over what happened and what must be remembered, before the relays move.</summary>
    /// <returns>Whether there was anything.</returns>
    private bool HandOver(in Moment now, bool pumpRuns)
    {
        var handedOver = false;
        var memoryChanged = control.MemoryVersion != savedVersion;
        if (memoryChanged || !tray.IsEmpty)
        {
            var memory = memoryChanged ? control.Save() : null;
            handedOver = true;
            savedVersion = control.MemoryVersion;
            heartbeatDue = memoryChanged ? now.Monotonic + HeartbeatEvery : heartbeatDue;
            var events = tray.Empty();
            foreach (var listener in outlets.Listeners)
            {
                listener.Happened(events, memory);
            }
        }

        if (now.Monotonic >= heartbeatDue)
        {
            handedOver = true;
            heartbeatDue = now.Monotonic + HeartbeatEvery;
            var memory = control.Save();
            foreach (var listener in outlets.Listeners)
            {
                listener.StillAlive(memory, isUrgent: pumpRuns);
            }
        }

        if (now.Monotonic >= sampleDue)
        {
            sampleDue = now.Monotonic + SampleEvery;
            foreach (var listener in outlets.Listeners)
            {
                listener.Sampled(now, readings);
            }
        }

        return handedOver;
    }

    private void LetListenersGoOn()
    {
        foreach (var listener in outlets.Listeners)
        {
            listener.GoOn();
        }
    }

    private bool DoesAnyPumpRun(RelayCommands commands)
    {
        foreach (var pump in pumps)
        {
            if (commands.IsOn(pump))
            {
                return true;
            }
        }

        return false;
    }

    private ScanHealth Health(IoOutcome inputs) =>
        new(pace.Scans, pace.Slips, pace.WorstLateness, pace.Lateness.Read(), inputs.Fault ?? outputs.Fault);

    /// <summary>Control holds that time goes on from scan to scan; a clock too coarse to show it is helped by a nanosecond.</summary>
    private Moment LaterThanLast(Moment now)
    {
        if (now.Monotonic <= last.Monotonic)
        {
            now = now with { Monotonic = new MonotonicTime(last.Monotonic.Nanoseconds + 1) };
        }

        last = now;
        return now;
    }
}

/// <summary>Where a scan loop gets requests from, and where what it has to tell goes.</summary>
/// <param name="Requests">What people ask for.</param>
/// <param name="Recording">Where everything that Control is told is put on record.</param>
/// <param name="Listeners">Who takes events, memory and samples.</param>
/// <param name="Status">Where a picture of the whole is put when somebody asks for one.</param>
/// <param name="Watchdogs">Who is told of good scans.</param>
internal sealed record ScanOutlets(
    RequestQueue Requests, ScanRecording Recording, IScanListener[] Listeners, StatusBoard Status, IWatchdog[] Watchdogs);
