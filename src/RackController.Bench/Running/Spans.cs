using NodaTime;

namespace RackController.Bench;

/// <summary>Lengths of time in words.</summary>
public static class Spans
{
    /// <summary>A length with its two most telling units: <c>2 h 30 min</c>, <c>1.5 s</c>, <c>250 ms</c>.</summary>
    /// <param name="length">A length, from 0.</param>
    public static string Words(Duration length)
    {
        if (length < Duration.FromSeconds(1))
        {
            return $"{length.TotalMilliseconds:0} ms";
        }

        if (length < Duration.FromMinutes(1))
        {
            return $"{length.TotalSeconds:0.#} s";
        }

        return length < Duration.FromHours(1)
            ? Pair(length.Minutes, "min", length.Seconds, "s")
            : length < Duration.FromDays(1)
                ? Pair(length.Hours, "h", length.Minutes, "min")
                : Pair(length.Days, "d", length.Hours, "h");
    }

    private static string Pair(int large, string largeUnit, int small, string smallUnit) =>
        small == 0 ? $"{large} {largeUnit}" : $"{large} {largeUnit} {small} {smallUnit}";
}
