using NodaTime;

namespace RackController.Bench;

/// <summary>Lengths of time in words.</summary>
public static class Spans
{
    /// <summary>A length with its two most telling units, rounded to the smaller: <c>2 h 30 min</c>, <c>1.5 s</c>, <c>250 ms</c>.</summary>
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

        var unit = length < Duration.FromHours(1) ? Duration.FromSeconds(1)
            : length < Duration.FromDays(1) ? Duration.FromMinutes(1)
            : Duration.FromHours(1);
        var rounded = unit * Math.Round(length / unit);
        return rounded < Duration.FromHours(1)
            ? Pair(rounded.Minutes, "min", rounded.Seconds, "s")
            : rounded < Duration.FromDays(1)
                ? Pair(rounded.Hours, "h", rounded.Minutes, "min")
                : Pair(rounded.Days, "d", rounded.Hours, "h");
    }

    private static string Pair(int large, string largeUnit, int small, string smallUnit) =>
        small == 0 ? $"{large} {largeUnit}" : $"{large} {largeUnit} {small} {smallUnit}";
}
