using NodaTime;

namespace RackController.Control;

/// <summary>Durations for people: <c>1 h 30 min</c>, <c>12 s</c>, <c>0.3 s</c>.</summary>
internal static class DurationWords
{
    public static string InWords(this Duration duration)
    {
        if (duration < Duration.FromSeconds(10))
        {
            return $"{duration.TotalSeconds:0.#} s";
        }

        var parts = new List<string>(3);
        Add(parts, (long)duration.TotalHours, "h");
        Add(parts, duration.Minutes, "min");
        Add(parts, duration.Seconds, "s");
        return string.Join(' ', parts);
    }

    private static void Add(List<string> parts, long count, string unit)
    {
        if (count != 0)
        {
            parts.Add($"{count} {unit}");
        }
    }
}
