using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Counts trips within the last 24 hours of monotonic time, remembering no more than it takes to latch.</summary>
internal sealed class RecentTrips(string key, int toLatch)
{
    private static readonly Duration window = Duration.FromHours(24);
    private readonly MonotonicTime[] times = new MonotonicTime[toLatch];
    private int count;

    /// <summary>Adds a trip and says whether it is one too many.</summary>
    public bool AddAndAskWhetherTooMany(MonotonicTime now)
    {
        DropBefore(now + -window);
        if (count == times.Length)
        {
            Array.Copy(times, 1, times, 0, --count);
        }

        times[count++] = now;
        return count == times.Length;
    }

    public void Clear() => count = 0;

    public void Save(MemoryWriter memory)
    {
        memory.Put($"{key}/trips", count);
        for (var i = 0; i < count; i++)
        {
            memory.PutAge($"{key}/trip {i} age", times[i]);
        }
    }

    public void Restore(MemoryReader memory)
    {
        count = 0;
        for (var i = 0; i < Math.Min(memory.Number($"{key}/trips") ?? 0, times.Length); i++)
        {
            if (memory.TimeOf($"{key}/trip {i} age") is { } time)
            {
                times[count++] = time;
            }
        }
    }

    private void DropBefore(MonotonicTime oldest)
    {
        var old = 0;
        while (old < count && times[old] < oldest)
        {
            old++;
        }

        count -= old;
        Array.Copy(times, old, times, 0, count);
    }
}
