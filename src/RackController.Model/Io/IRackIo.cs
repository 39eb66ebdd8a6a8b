namespace RackController.Model;

/// <summary>
/// The one port between deciding and doing: reads what the sensors say, writes what the loads are told. A board and the
/// simulated rack both answer it, and whoever calls cannot tell which. Called from one thread only.
/// </summary>
public interface IRackIo
{
    /// <summary>Fills <paramref name="readings"/> with the newest reading of every sensor, without waiting for any bus.</summary>
    /// <param name="now">The monotonic time of this scan.</param>
    /// <param name="readings">Where to put them.</param>
    /// <returns>Whether the inputs could be read at all; a single silent sensor is a reading's quality, not a fault.</returns>
    IoOutcome Read(MonotonicTime now, Readings readings);

    /// <summary>Gives every load what it is told.</summary>
    /// <param name="now">The monotonic time of this scan.</param>
    /// <param name="commands">What each load is told.</param>
    /// <returns>Whether every relay took its command.</returns>
    IoOutcome Write(MonotonicTime now, RelayCommands commands);

    /// <summary>Gives every load what it is told last, and waits for a moment until that was seen, where a bus lies in between. Not for
    /// a running scan.</summary>
    /// <param name="now">The monotonic time.</param>
    /// <param name="commands">What each load is told.</param>
    /// <returns>Whether every relay was seen to take its command.</returns>
    IoOutcome WriteLast(MonotonicTime now, RelayCommands commands) => Write(now, commands);
}

/// <summary>Whether inputs or outputs did what they were asked.</summary>
/// <param name="Fault">What failed and where, in words for a person; null when nothing did.</param>
public readonly record struct IoOutcome(string? Fault)
{
    /// <summary>Nothing failed.</summary>
    public static IoOutcome Ok => default;

    /// <summary>Whether nothing failed.</summary>
    public bool IsOk => Fault is null;
}
