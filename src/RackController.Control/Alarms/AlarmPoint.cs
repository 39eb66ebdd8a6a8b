using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// One alarm and its way through the states of ISA-18.2. It follows its condition and its latch; people acknowledge,
/// shelve and take it out of service. None of that touches the interlock behind it.
/// </summary>
internal sealed class AlarmPoint(string key)
{
    /// <summary>The longest that an alarm may be out of sight by one request: whoever comes next shall see it within a day.</summary>
    public static readonly Duration LongestShelving = Duration.FromHours(24);

    private bool isPresent;
    private bool isLatched;
    private MonotonicTime shelvedUntil;

    public string Key { get; } = key;

    public AlarmState State { get; private set; }

    /// <summary>When it came into its state.</summary>
    public Moment Since { get; private set; }

    /// <summary>When it comes into sight again by itself; never unless it is shelved.</summary>
    public MonotonicTime Due => State == AlarmState.Shelved ? shelvedUntil : MonotonicTime.Never;

    /// <summary>Follows condition and latch.</summary>
    /// <returns>Whether the state changed.</returns>
    public bool Follow(bool present, bool latched, bool suppressed, in Moment now)
    {
        isPresent = present;
        isLatched = latched;
        return Move(Next(suppressed, now.Monotonic), now);
    }

    /// <summary>Somebody has seen it.</summary>
    /// <returns>Whether there was anything to acknowledge.</returns>
    public bool Acknowledge(in Moment now) => State switch
    {
        AlarmState.Unacknowledged => Move(isPresent ? AlarmState.Acknowledged : AlarmState.Latched, now),
        AlarmState.ReturnedUnacknowledged => Move(AlarmState.Normal, now),
        _ => false,
    };

    /// <summary>Takes it out of sight for a while.</summary>
    /// <returns>Whether it was in sight.</returns>
    public bool Shelve(Duration length, in Moment now)
    {
        Invariant.Holds(length >= Duration.Zero && length <= LongestShelving, "an alarm is shelved for a day at most");
        if (State is AlarmState.Normal or AlarmState.Shelved or AlarmState.SuppressedByDesign or AlarmState.OutOfService)
        {
            return false;
        }

        shelvedUntil = now.Monotonic + length;
        return Move(AlarmState.Shelved, now);
    }

    /// <summary>Brings it into sight again before its time.</summary>
    /// <returns>Whether it was shelved.</returns>
    public bool Unshelve(in Moment now) => State == AlarmState.Shelved && Move(Fresh(), now);

    /// <summary>Takes it out of sight for maintenance, or puts it back.</summary>
    /// <returns>Whether that changed anything.</returns>
    public bool SetOutOfService(bool outOfService, in Moment now) => outOfService
        ? Move(AlarmState.OutOfService, now)
        : State == AlarmState.OutOfService && Move(Fresh(), now);

    public void Save(MemoryWriter memory)
    {
        if (State != AlarmState.Normal)
        {
            memory.Put($"{Key}/alarm/state", (long)State);
        }

        if (State == AlarmState.Shelved)
        {
            memory.PutAge($"{Key}/alarm/shelved until age", shelvedUntil);
        }
    }

    /// <summary>Takes back the state of an earlier run. Shelving goes on for what was left of it when it was saved.</summary>
    public void Restore(MemoryReader memory, Moment start)
    {
        if (memory.Number($"{Key}/alarm/state") is >= 0 and <= (long)AlarmState.OutOfService and { } state)
        {
            State = (AlarmState)state;
            Since = start;
            shelvedUntil = start.Monotonic + -(memory.Length($"{Key}/alarm/shelved until age") ?? Duration.Zero);
        }
    }

    private AlarmState Next(bool suppressed, MonotonicTime now) => State switch
    {
        AlarmState.OutOfService => AlarmState.OutOfService,
        AlarmState.Shelved when now < shelvedUntil => AlarmState.Shelved,
        _ when suppressed => AlarmState.SuppressedByDesign,
        AlarmState.Shelved or AlarmState.SuppressedByDesign or AlarmState.Normal => Fresh(),
        AlarmState.ReturnedUnacknowledged when isPresent || isLatched => AlarmState.Unacknowledged,
        AlarmState.Unacknowledged when !isPresent && !isLatched => AlarmState.ReturnedUnacknowledged,
        AlarmState.Acknowledged when !isPresent => isLatched ? AlarmState.Latched : AlarmState.Normal,
        AlarmState.Latched when isPresent => AlarmState.Unacknowledged,
        AlarmState.Latched when !isLatched => AlarmState.Normal,
        var same => same,
    };

    private AlarmState Fresh() => isPresent || isLatched ? AlarmState.Unacknowledged : AlarmState.Normal;

    private bool Move(AlarmState next, in Moment now)
    {
        if (next == State)
        {
            return false;
        }

        State = next;
        Since = now;
        return true;
    }
}
