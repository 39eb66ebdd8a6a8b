namespace RackController.Page;

/// <summary>Makes whoever guesses wait: five wrong passwords in a row for a name, or from an address, and the next try is a minute off,
/// then two, four, an hour at most. Kept in memory. It never touches a session or a stop. From any thread.</summary>
/// <param name="time">What the waits are counted by; only its monotonic part is used.</param>
internal sealed class Lockouts(TimeProvider time)
{
    /// <summary>How many may be wrong in a row.</summary>
    public const int Free = 5;

    // Whoever fills it makes the oldest be forgotten, at the price of a password check each.
    private const int MostKept = 2000;

    private static readonly TimeSpan first = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan longest = TimeSpan.FromHours(1);
    private static readonly TimeSpan forgetAfter = TimeSpan.FromHours(24);

    private readonly Lock gate = new();
    private readonly Dictionary<string, Tries> kept = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Somebody tries. It counts as wrong until it proves right, so that many at once are no way around.</summary>
    /// <param name="keys">The name and the address.</param>
    public Attempt Begin(params ReadOnlySpan<string> keys)
    {
        lock (gate)
        {
            var (wait, most) = (TimeSpan.Zero, 0);
            foreach (var key in keys)
            {
                var tries = Find(key);
                most = Math.Max(most, (tries?.Count ?? 0) + 1);
                if (tries is { Count: >= Free } && WaitAfter(tries.Count) - time.GetElapsedTime(tries.LastAt) is var left && left > wait)
                {
                    wait = left;
                }
            }

            if (wait == TimeSpan.Zero)
            {
                Count(keys);
            }

            return new Attempt(wait, most);
        }
    }

    /// <summary>A try was right.</summary>
    /// <param name="keys">The name and the address.</param>
    public void Succeeded(params ReadOnlySpan<string> keys)
    {
        lock (gate)
        {
            foreach (var key in keys)
            {
                kept.Remove(key);
            }
        }
    }

    private void Count(ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
        {
            kept[key] = new Tries((Find(key)?.Count ?? 0) + 1, time.GetTimestamp());
        }

        while (kept.Count > MostKept)
        {
            kept.Remove(kept.MinBy(entry => entry.Value.LastAt).Key);
        }
    }

    private static TimeSpan WaitAfter(int count)
    {
        const int mostDoublings = 10;
        var wait = first * (1 << Math.Min(count - Free, mostDoublings));
        return wait < longest ? wait : longest;
    }

    private Tries? Find(string key)
    {
        if (!kept.TryGetValue(key, out var tries))
        {
            return null;
        }

        if (time.GetElapsedTime(tries.LastAt) < forgetAfter)
        {
            return tries;
        }

        kept.Remove(key);
        return null;
    }

    private sealed record Tries(int Count, long LastAt);
}

/// <summary>One try.</summary>
/// <param name="Wait">How long to wait for it; zero where it may go on.</param>
/// <param name="Number">The how manieth in a row it is, by name or address.</param>
internal sealed record Attempt(TimeSpan Wait, int Number);
