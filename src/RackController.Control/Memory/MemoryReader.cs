using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Reads what was remembered. A name that is not there was never written: the reader says what that means.</summary>
internal sealed class MemoryReader(ControlMemory? memory, Moment now)
{
    private const long Most = 1L << 53;
    private const long CenturyMs = 100L * 366 * 24 * 60 * 60 * 1000;

    /// <summary>Whether there is any memory at all.</summary>
    public bool IsEmpty => memory is null;

    /// <summary>How long the controller was away, as far as two trusted readings of the wall clock can tell; zero where
    /// they cannot, which is the worse assumption for every timer that must run out.</summary>
    public Duration Away { get; } = memory is { WallTrusted: true } && now.WallTrusted && now.Wall > memory.SavedAt
        && now.Wall - memory.SavedAt <= Duration.FromMilliseconds(CenturyMs)
            ? now.Wall - memory.SavedAt
            : Duration.Zero;

    /// <summary>Whether anything was ever written under a name, whatever it is.</summary>
    public bool Knows(string key) => memory is not null && memory.Items.ContainsKey(key);

    /// <summary>A number; null also for one that a broken record made up, since nothing counts so far.</summary>
    public long? Number(string key) =>
        memory is not null && memory.Items.TryGetValue(key, out var value) && value is >= -Most and <= Most ? value : null;

    /// <summary>A length of time of at most a century; null for anything else.</summary>
    public Duration? Length(string key) =>
        Number(key) is >= -CenturyMs and <= CenturyMs and { } ms ? Duration.FromMilliseconds(ms) : null;

    /// <summary>A wall time of the centuries in which this program may run; null for anything else.</summary>
    public Instant? WallTime(string key) =>
        Number(key) is >= 0 and <= 3 * CenturyMs and { } ms ? Instant.FromUnixTimeMilliseconds(ms) : null;

    /// <summary>The monotonic time that lies as long ago as the remembered age, and the time away.</summary>
    public MonotonicTime? TimeOf(string key) => Length(key) is { } age ? now.Monotonic + -(age + Away) : null;
}
