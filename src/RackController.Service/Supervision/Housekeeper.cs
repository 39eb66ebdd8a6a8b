using System.Globalization;
using NodaTime;
using RackController.Control;
using RackController.Model;
using Serilog;

namespace RackController.Service;

/// <summary>
/// Does what must be done now and then and may wait: writes the log, tells the supervisor a status line, looks whether the
/// wall clock is vouched for and whether the disk has room, has upkeep looked at, lets go of memory that only the start or a visit
/// needed, and sums up every hour. It runs on a thread of its own, so that nothing here can make a scan late.
/// </summary>
internal sealed class Housekeeper : IDisposable
{
    /// <summary>Below this much room on the disk the grower is told: 50 MB.</summary>
    internal const long LeastFreeBytes = 50_000_000;

    private static readonly TimeSpan Round = TimeSpan.FromSeconds(1);
    private static readonly Duration LookEvery = Duration.FromSeconds(10);
    private static readonly Duration StatusEvery = Duration.FromSeconds(1);

    private readonly ILogger log;
    private readonly EventLog events;
    private readonly StatusBoard board;
    private readonly Supervisor supervisor;
    private readonly IWallTrust trust;
    private readonly ControllerAlarms alarms;
    private readonly StateFolder folder;
    private readonly Journal journal;
    private readonly GoodScans goodScans;
    private readonly UpkeepWatch upkeep;
    private readonly SignOfLife alive;
    private readonly bool hadLock;
    private readonly HourlyTally tally = new();
    private readonly AutoResetEvent stop = new(false);
    private readonly Thread thread;
    private MonotonicTime lookDue;
    private MonotonicTime aliveDue;
    private MonotonicTime statusDue;
    private string? aliveFault;
    private long toldOfEvents;
    private MonotonicTime tidyDue = HostClock.MonotonicNow() + UnusedMemory.Due.First;
    private MonotonicTime summaryDue = HostClock.MonotonicNow() + Duration.FromHours(1);

    public Housekeeper(
        ILogger log, EventLog events, StatusBoard board, Supervisor supervisor, IWallTrust trust, ControllerAlarms alarms,
        StateFolder folder, Journal journal, GoodScans goodScans, UpkeepWatch upkeep)
    {
        this.log = log;
        this.events = events;
        this.board = board;
        this.supervisor = supervisor;
        this.trust = trust;
        this.alarms = alarms;
        this.folder = folder;
        this.journal = journal;
        this.goodScans = goodScans;
        this.upkeep = upkeep;
        alive = SignOfLife.At(folder.Alive);
        hadLock = File.Exists(folder.Lock);
        thread = new Thread(Run) { Name = "housekeeping", IsBackground = true };
    }

    /// <summary>Begins.</summary>
    public void Start() => thread.Start();

    /// <summary>Ends, with the log written.</summary>
    /// <param name="patience">How long to wait for it.</param>
    public bool Stop(TimeSpan patience)
    {
        stop.Set();
        return thread.Join(patience);
    }

    /// <summary>A housekeeper that a dead console holds goes with the process; the stop must not wait for it.</summary>
    public void Dispose()
    {
        if (!thread.IsAlive)
        {
            stop.Dispose();
            events.Dispose();
        }
    }

    private void Run()
    {
        WaitHandle[] calls = [stop, events.Arrived, journal.Kept];
        while (WaitHandle.WaitAny(calls, UntilDue()) != 0)
        {
            TryOnce();
        }

        TryOnce();
    }

    private bool OwesStatus => supervisor.IsPresent && journal.Committed != toldOfEvents;

    /// <summary>How long nothing is due. What was due and could not be done is tried again after a round.</summary>
    private TimeSpan UntilDue()
    {
        var due = MonotonicTime.Earlier(MonotonicTime.Earlier(lookDue, aliveDue), MonotonicTime.Earlier(tidyDue, summaryDue));
        var next = (OwesStatus ? MonotonicTime.Earlier(due, statusDue) : due) - HostClock.MonotonicNow();

        // A wait may end a little early, and would then be for nothing.
        return next < Duration.Zero ? Round : (next + Duration.FromMilliseconds(5)).ToTimeSpan();
    }

    private void TryOnce()
    {
        try
        {
            DoOnce(HostClock.MonotonicNow());
        }
        catch (Exception e)
        {
            // Housekeeping must not take the rack down with it.
            log.Error(e, "housekeeping failed; it is tried again");
        }
    }

    private void DoOnce(MonotonicTime now)
    {
        events.WriteWaiting(tally);
        if (now >= lookDue)
        {
            lookDue = now + LookEvery;
            trust.LookAgain();
            LookAtDisk();
            LookAtSupervisor();
            upkeep.Follow();
            toldOfEvents = -1;
        }

        if (now >= aliveDue && goodScans.TakeAny())
        {
            // Together with the next look, so that one waking does for both.
            aliveDue = MonotonicTime.Earlier(lookDue, now + SignOfLife.Every);
            GiveSignOfLife();
        }

        // What a supervisor is told to be in the journal is there, whatever becomes of the process afterwards. Not at every event: each
        // picture is made by the scan, and each line is work for a supervisor that shares the processor with it.
        if (now >= statusDue && OwesStatus && Picture() is { } status)
        {
            statusDue = now + StatusEvery;
            toldOfEvents = journal.Committed;
            supervisor.Status(Line(status));
        }

        if (now >= tidyDue)
        {
            tidyDue = now + UnusedMemory.Due.Later;
            if (UnusedMemory.LetGo() is { } fault)
            {
                log.Information("{Fault:l}", fault);
            }
        }

        if (now >= summaryDue && Picture() is { } hourly)
        {
            summaryDue = now + Duration.FromHours(1);
            log.Information("in the last hour: {Tally:l}; {Status:l}", tally.Take(), Line(hourly));
        }
    }

    private void GiveSignOfLife()
    {
        var fault = alive.Give();
        if (fault is not null && aliveFault is null)
        {
            log.Warning(
                "{File:l} cannot say that scans are good, and notices will tell of a silent controller: {Fault:l}", folder.Alive, fault);
        }

        aliveFault = fault;
    }

    /// <summary>A picture of the whole; null when the scan does not make one in time.</summary>
    private SiteStatus? Picture()
    {
        var asked = board.Ask();
        return asked.Wait(Round) ? asked.Result : null;
    }

    private void LookAtSupervisor()
    {
        if (supervisor.Complaint is { } complaint)
        {
            alarms.Raise(ControllerTrouble.SupervisorDeaf, complaint);
        }
        else
        {
            alarms.Clear(ControllerTrouble.SupervisorDeaf);
        }
    }

    private void LookAtDisk()
    {
        if (hadLock && !File.Exists(folder.Lock))
        {
            alarms.Raise(ControllerTrouble.NotAlone, $"somebody deleted {folder.Lock}, which keeps a second controller away");
        }

        try
        {
            var free = new DriveInfo(folder.Path).AvailableFreeSpace;
            if (free < LeastFreeBytes)
            {
                alarms.Raise(ControllerTrouble.DiskNearlyFull, $"{free / 1_000_000} MB are left on the disk of {folder.Path}");
            }
            else
            {
                alarms.Clear(ControllerTrouble.DiskNearlyFull);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            alarms.Raise(ControllerTrouble.DiskNearlyFull, $"the room on the disk of {folder.Path} cannot be told: {e.Message}");
        }
    }

    private string Line(SiteStatus status)
    {
        var on = status.Loads.Count(load => load.State == SwitchState.On);
        var unseen = status.Alarms.Count(alarm => alarm.State == AlarmState.Unacknowledged);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{on} of {status.Loads.Length} loads on, {status.Alarms.Length} alarms ({unseen} unacknowledged), "
            + $"{status.Health.Scans} scans, {status.Health.Slips} late, "
            + $"at worst by {status.Health.WorstLateness.TotalMilliseconds:0.#} ms, {journal.Committed} events in the journal");
    }
}
