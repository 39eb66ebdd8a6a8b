using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>What can be wrong with the controller itself, beside the rack.</summary>
internal enum ControllerTrouble
{
    /// <summary>The journal cannot be written.</summary>
    JournalUnwritable,

    /// <summary>The journal could not be used and was put aside.</summary>
    JournalSetAside,

    /// <summary>The disk of the journal is nearly full.</summary>
    DiskNearlyFull,

    /// <summary>Nothing keeps a second process from driving the same rack.</summary>
    NotAlone,

    /// <summary>Events were lost because the journal could not be written for too long.</summary>
    EventsLost,

    /// <summary>The page cannot be served.</summary>
    PageDown,

    /// <summary>Days cannot be summed up.</summary>
    DaysNotSummed,

    /// <summary>A rack no longer floods as it was fitted to.</summary>
    RackDrifts,

    /// <summary>Works of upkeep wait too long.</summary>
    UpkeepOverdue,

    /// <summary>A schedule cannot follow what stands on the tiers.</summary>
    ScheduleCannotFollow,

    /// <summary>Whoever supervises this process cannot be told how it is.</summary>
    SupervisorDeaf,
}

/// <summary>
/// The alarms of the controller itself. They follow the states of ISA-18.2 like those of the rack, and never hold the
/// rack up: a full disk stops no pump and starts none.
/// </summary>
internal sealed class ControllerAlarms(IScanClock clock)
{
    private readonly TellingTime time = new(clock);
    private readonly Lock gate = new();
    private readonly SortedDictionary<ControllerTrouble, Alarm> active = [];
    private IScanListener[] listeners = [];

    /// <summary>What a person is told of each, by its key.</summary>
    public static IEnumerable<KeyValuePair<string, AlarmText>> Texts => Enum.GetValues<ControllerTrouble>()
        .Select(trouble => Describe(trouble, "", default))
        .Select(alarm => KeyValuePair.Create(
            alarm.Key, new AlarmText(alarm.Priority, alarm.Consequence, alarm.Action, alarm.RespondWithin)));

    /// <summary>Who is told of changes; set once, before any thread starts.</summary>
    public void TellTo(IScanListener[] tell) => listeners = tell;

    /// <summary>Every alarm that is not normal.</summary>
    public ImmutableArray<Alarm> Active()
    {
        lock (gate)
        {
            return [.. active.Values];
        }
    }

    /// <summary>Something is wrong; saying so again changes nothing.</summary>
    /// <param name="trouble">What.</param>
    /// <param name="cause">It in words.</param>
    public void Raise(ControllerTrouble trouble, string cause)
    {
        lock (gate)
        {
            if (!active.TryGetValue(trouble, out var known) || known.State == AlarmState.ReturnedUnacknowledged)
            {
                Change(trouble, Describe(trouble, cause, time.Now()));
            }
        }
    }

    /// <summary>It is right again.</summary>
    /// <param name="trouble">What was wrong.</param>
    public void Clear(ControllerTrouble trouble)
    {
        lock (gate)
        {
            if (active.TryGetValue(trouble, out var known) && known.State != AlarmState.ReturnedUnacknowledged)
            {
                var state = known.State == AlarmState.Unacknowledged ? AlarmState.ReturnedUnacknowledged : AlarmState.Normal;
                Change(trouble, known with { State = state, Since = time.Now() });
            }
        }
    }

    /// <summary>Somebody has seen an alarm.</summary>
    /// <param name="key">Its key.</param>
    /// <returns>Whether the key is that of an alarm here.</returns>
    public bool TryAcknowledge(string key)
    {
        lock (gate)
        {
            foreach (var (trouble, alarm) in active)
            {
                if (alarm.Key == key)
                {
                    var state = alarm.State != AlarmState.ReturnedUnacknowledged && StaysWhenSeen(trouble)
                        ? AlarmState.Acknowledged
                        : AlarmState.Normal;
                    if (state != alarm.State)
                    {
                        Change(trouble, alarm with { State = state, Since = time.Now() });
                    }

                    return true;
                }
            }

            return false;
        }
    }

    /// <summary>What was put aside or lost stays so; once seen, there is nothing left to say.</summary>
    private static bool StaysWhenSeen(ControllerTrouble trouble) =>
        trouble is not (ControllerTrouble.JournalSetAside or ControllerTrouble.EventsLost);

    private void Change(ControllerTrouble trouble, Alarm alarm)
    {
        if (alarm.State == AlarmState.Normal)
        {
            active.Remove(trouble);
        }
        else
        {
            active[trouble] = alarm;
        }

        ControlEvent[] events = [new(alarm.Since, EventKind.Alarm, alarm.Key, alarm.State.InWords(), alarm.Cause)];
        foreach (var listener in listeners)
        {
            listener.Happened(events, null);
            listener.GoOn();
        }
    }

    private static Alarm Describe(ControllerTrouble trouble, string cause, Moment since)
    {
        Alarm Of(string key, AlarmPriority priority, string consequence, string action, string within) =>
            new(key, priority, AlarmState.Unacknowledged, since, cause, consequence, action, within);

        return trouble switch
        {
            ControllerTrouble.JournalUnwritable => Of("controller/journal", AlarmPriority.Medium,
                "what happens is kept in memory only; after a restart latches and run totals would be unknown",
                "free space on the disk, or mend its permissions; writing is tried again by itself", "within a day"),
            ControllerTrouble.JournalSetAside => Of("controller/journal-set-aside", AlarmPriority.Low,
                "the record starts anew; latches, stops and run totals that could not be read are forgotten, and timers begin again",
                "look whether the rack was stopped or latched for a reason, then acknowledge; the old file is kept",
                "within a day"),
            ControllerTrouble.DiskNearlyFull => Of("controller/disk-space", AlarmPriority.Low,
                "the journal will soon be unwritable", "free space on the disk", "within a day"),
            ControllerTrouble.NotAlone => Of("controller/lock", AlarmPriority.Medium,
                "a second controller started by mistake might drive the same rack",
                "make the state folder writable and restart", "within a day"),
            ControllerTrouble.DaysNotSummed => Of("controller/day-sums", AlarmPriority.Low,
                "what days came to is missing from the charts of months and years; all else is on record",
                "tell whoever looks after the program what this alarm says; it is tried again by itself", "within a week"),
            ControllerTrouble.SupervisorDeaf => Of("controller/supervisor", AlarmPriority.Low,
                "the supervisor may restart a controller that works, and cannot show how it is",
                "see that the unit lets this program notify it (NotifyAccess), then restart the unit", "within a week"),
            ControllerTrouble.PageDown => Of("controller/page", AlarmPriority.Low,
                "nobody can look at the rack from afar or stop it there; the rack is driven as before",
                "see that no other program uses the page's address, or name another with --page; it is tried again by itself",
                "within a day"),
            ControllerTrouble.RackDrifts => Of("controller/drift", AlarmPriority.Low,
                "floods are not what the schedule was made for: roots may get water for too short or stand in it for too long",
                "look at the part that is named; once it is right, or to stay as it is, fit the rack anew with `tune`", "within a week"),
            ControllerTrouble.ScheduleCannotFollow => Of("controller/batches", AlarmPriority.Low,
                "lights and floods stay as they are, which may not suit what stands on the tiers",
                "mend what is named, or write the schedule by hand; the page of batches shows what is asked; it is tried again by itself",
                "within a day"),
            ControllerTrouble.UpkeepOverdue => Of("controller/upkeep", AlarmPriority.Low,
                "screens, weeps and floats clog, and the rack floods less well until an interlock has to stop it",
                "do what the page of upkeep or the verb `upkeep` says is due, and put it down there as done", "within a week"),
            _ => Of("controller/events-lost", AlarmPriority.Medium,
                "the record has a gap", "find out why the disk could not be written for so long", "within a day"),
        };
    }
}
