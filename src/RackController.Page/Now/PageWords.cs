using System.Globalization;
using NodaTime;

namespace RackController.Page;

/// <summary>Words that every part of the page uses alike.</summary>
internal static class PageWords
{
    /// <summary>A time of the same day as the clock, or with its day.</summary>
    public static string Clock(Instant at, Instant now, DateTimeZone zone)
    {
        var local = at.InZone(zone);
        return local.ToString(local.Date == now.InZone(zone).Date ? "HH:mm:ss" : "ddd HH:mm:ss", CultureInfo.InvariantCulture);
    }

    /// <summary>A date and time: <c>25 Nov 2026 09:12</c>.</summary>
    public static string Date(Instant at, DateTimeZone zone) => at.InZone(zone).ToString("d MMM yyyy HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A length that counts down: <c>9 min 58 s</c>.</summary>
    public static string CountDown(Duration left)
    {
        var seconds = (long)Math.Ceiling(Math.Max(0, left.TotalSeconds));
        return seconds switch
        {
            < 60 => $"{seconds} s",
            < 3600 => $"{seconds / 60} min{(seconds % 60 == 0 ? "" : $" {seconds % 60} s")}",
            _ => $"{seconds / 3600} h{(seconds / 60 % 60 == 0 ? "" : $" {seconds / 60 % 60} min")}",
        };
    }
}
