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
