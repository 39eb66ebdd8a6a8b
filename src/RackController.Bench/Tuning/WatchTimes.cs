using System.Collections.Immutable;
using System.Globalization;

namespace RackController.Bench;

/// <summary>Times as a stopwatch shows them: minutes and seconds, <c>3:10</c>.</summary>
public static class WatchTimes
{
    private const int MostMinutes = 240;

    /// <summary>A time in words; never where it is null.</summary>
    /// <param name="seconds">The time, s: 0 or more.</param>
    public static string Words(double? seconds)
    {
        if (seconds is not { } known)
        {
            return "never";
        }

        var whole = (long)Math.Round(known);
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00} min");
    }

    /// <summary>Reads times with commas between them: <c>3:10, 3:14, 3:09</c>.</summary>
    /// <param name="text">What was written.</param>
    /// <returns>The times, s: above 0 and up to 240 min; null where one of them is none.</returns>
    public static ImmutableArray<double>? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var times = text.Split(',').Select(one => Seconds(one.Trim())).ToList();
        return times.Contains(null) ? null : [.. times.OfType<double>()];
    }

    private static double? Seconds(string text)
    {
        var parts = text.Split(':');
        return parts.Length == 2 && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var minutes)
            && double.TryParse(parts[1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds)
            && minutes <= MostMinutes && seconds < 60 && minutes * 60 + seconds > 0
            ? minutes * 60 + seconds
            : null;
    }
}
