using RackController.Control;

namespace RackController.Bench;

/// <summary>Holds what a replayed controller remembers against what is on record.</summary>
internal static class MemoryMatch
{
    // A time is remembered in whole milliseconds, and taken up again from there.
    private const long RoundingMs = 2;
    private const long LeastTimeMs = 1_000;

    // To take a rack up in the middle switches every relay once more, to the mind of who counts it.
    private const string CountsSwitching = "/relay-worn/operations";

    /// <summary>The keys under which something else is remembered.</summary>
    /// <param name="memory">What is remembered.</param>
    /// <param name="then">What is on record.</param>
    /// <param name="isTakenUp">Whether the controller was taken up in the middle.</param>
    public static IEnumerable<string> Differing(ControlMemory memory, ControlMemory? then, bool isTakenUp)
    {
        foreach (var key in memory.Items.Keys.Union(then?.Items.Keys ?? [], StringComparer.Ordinal))
        {
            var (a, b) = (Value(memory, key), Value(then, key));
            var isForgiven = isTakenUp && (key.EndsWith(CountsSwitching, StringComparison.Ordinal) || IsRounded(a, b));
            if (a != b && !isForgiven)
            {
                yield return key;
            }
        }
    }

    /// <summary>Whether a key is of an alarm's state.</summary>
    public static bool IsOfAlarm(string key) => key.Contains("/alarm/", StringComparison.Ordinal);

    /// <summary>What is remembered under a key, in words.</summary>
    public static string Words(ControlMemory? memory, string key) =>
        Value(memory, key) is { } value ? $"remembered as {value}" : "not remembered";

    private static long? Value(ControlMemory? memory, string key) =>
        memory is not null && memory.Items.TryGetValue(key, out var value) ? value : null;

    private static bool IsRounded(long? a, long? b) => a >= LeastTimeMs && b >= LeastTimeMs && Math.Abs(a.Value - b.Value) <= RoundingMs;
}
