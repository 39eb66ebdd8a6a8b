using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Writes what must be remembered, as named numbers; timers as ages at the moment of saving.</summary>
/// <param name="now">The moment of saving.</param>
/// <param name="expected">About how many numbers will come.</param>
internal sealed class MemoryWriter(Moment now, int expected)
{
    private readonly List<RememberedNumber> items = new(expected);

    /// <summary>When it is written.</summary>
    public MonotonicTime Now => now.Monotonic;

    /// <summary>How many numbers were put so far.</summary>
    public int Count => items.Count;

    public void Put(MemoryName name, long value) => items.Add(new RememberedNumber(name, value));

    public void Put(MemoryName name, Duration value) => Put(name, (long)value.TotalMilliseconds);

    /// <summary>Keeps how long ago a monotonic time was.</summary>
    public void PutAge(MemoryName name, MonotonicTime time) => Put(name, now.Monotonic - time);

    /// <summary>Keeps a wall time.</summary>
    public void Put(MemoryName name, Instant time) => Put(name, time.ToUnixTimeMilliseconds());

    public ControlMemory ToMemory() => new(now.Wall, now.WallTrusted, items);
}
