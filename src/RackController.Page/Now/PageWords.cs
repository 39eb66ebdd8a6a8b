using System.Globalization;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Page;

/// <summary>Words that every part of the page uses alike.</summary>
internal static class PageWords
{
    /// <summary>Where a flood cycle is.</summary>
    public static string Of(FloodPhase phase) => phase switch
    {
        FloodPhase.Idle => "at rest",
        FloodPhase.Waiting => "flood waits",
        FloodPhase.Filling => "filling",
        FloodPhase.Soaking => "soaking",
        FloodPhase.Draining => "draining",
        _ => throw new InvariantBrokenException($"every phase of a flood has its words, {phase} too"),
    };

    /// <summary>How urgent an alarm is.</summary>
    public static string Of(AlarmPriority priority) => priority switch
    {
        AlarmPriority.Critical => "critical",
        AlarmPriority.High => "high",
        AlarmPriority.Medium => "medium",
        AlarmPriority.Low => "low",
        _ => throw new InvariantBrokenException($"every alarm priority has its word, {priority} too"),
    };

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
