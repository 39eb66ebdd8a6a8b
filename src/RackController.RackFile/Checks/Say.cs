using System.Globalization;
using NodaTime;

namespace RackController.RackFile.Checks;

/// <summary>Numbers as people write them.</summary>
internal static class Say
{
    /// <summary>A number with at most this many decimals.</summary>
    public static string Number(double value, int decimals = 0) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture);

    /// <summary>A duration such as <c>1 h 30 min</c>.</summary>
    public static string Time(Duration duration)
    {
        if (duration == Duration.Zero)
        {
            return "0 min";
        }

        var parts = new List<string>();
        Add(parts, (int)duration.TotalHours, "h");
        Add(parts, duration.Minutes, "min");
        Add(parts, duration.Seconds, "s");
        return parts.Count > 0 ? string.Join(' ', parts) : $"{Number(duration.TotalMilliseconds)} ms";
    }

    /// <summary>A moment of the day such as <c>07:00</c>.</summary>
    /// <param name="sinceMidnight">Time since midnight; whole days count for nothing.</param>
    public static string Clock(Duration sinceMidnight)
    {
        var minutes = (int)(sinceMidnight.TotalMinutes % (24 * 60));
        return string.Create(CultureInfo.InvariantCulture, $"{minutes / 60:00}:{minutes % 60:00}");
    }

    private static void Add(List<string> parts, int count, string unit)
    {
        if (count > 0)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{count} {unit}"));
        }
    }
}
