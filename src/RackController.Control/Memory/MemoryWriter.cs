using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Writes what must be remembered, as named numbers; timers as ages at the moment of saving.</summary>
internal sealed class MemoryWriter(Moment now)
{
    private readonly ImmutableSortedDictionary<string, long>.Builder items =
        ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);

    /// <summary>When it is written.</summary>
    public MonotonicTime Now => now.Monotonic;

    public void Put(string key, long value) => items[key] = value;

    public void Put(string key, Duration value) => items[key] = (long)value.TotalMilliseconds;

    /// <summary>Keeps how long ago a monotonic time was.</summary>
    public void PutAge(string key, MonotonicTime time) => Put(key, now.Monotonic - time);

    /// <summary>Keeps a wall time.</summary>
    public void Put(string key, Instant time) => items[key] = time.ToUnixTimeMilliseconds();

    public ControlMemory ToMemory() => new(now.Wall, now.WallTrusted, items.ToImmutable());
}

/// <summary>Reads what was remembered. A name that is not there was never written: the reader says what that means.</summary>
internal sealed class MemoryReader(ControlMemory? memory, Moment now)
{
    /// <summary>Whether there is any memory at all.</summary>
    public bool IsEmpty => memory is null;

    /// <summary>How long the controller was away, as far as two trusted readings of the wall clock can tell; zero where
    /// they cannot, which is the worse assumption for every timer that must run out.</summary>
    public Duration Away { get; } = memory is { WallTrusted: true } && now.WallTrusted && now.Wall > memory.SavedAt
        ? now.Wall - memory.SavedAt
        : Duration.Zero;

    public long? Number(string key) => memory is not null && memory.Items.TryGetValue(key, out var value) ? value : null;

    public Duration? Length(string key) => Number(key) is { } ms ? Duration.FromMilliseconds(ms) : null;

    public Instant? WallTime(string key) => Number(key) is { } ms ? Instant.FromUnixTimeMilliseconds(ms) : null;

    /// <summary>The monotonic time that lies as long ago as the remembered age, and the time away.</summary>
    public MonotonicTime? TimeOf(string key) => Length(key) is { } age ? now.Monotonic + -(age + Away) : null;
}
