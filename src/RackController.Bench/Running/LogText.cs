using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NodaTime;
using NodaTime.Text;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A run's log as text, one line for each event: local time with its offset, time since the start, what
/// happened to what, and why. The same run always gives the same bytes.</summary>
public static class LogText
{
    private static readonly ZonedDateTimePattern Local =
        ZonedDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm:ss.f o<+HH:mm>", DateTimeZoneProviders.Tzdb);

    private static readonly ZonedDateTimePattern ToTheMinute =
        ZonedDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm", DateTimeZoneProviders.Tzdb);

    /// <summary>A true time as the site's people would say it, to the tenth of a second and with its offset.</summary>
    /// <param name="site">The site.</param>
    /// <param name="at">The time.</param>
    public static string LocalTime(Site site, Instant at) => Local.Format(at.InZone(site.Zone));

    /// <summary>A true time as the site's people would say it, to the minute it lies in: <c>2026-03-02 07:00</c>.</summary>
    /// <param name="site">The site.</param>
    /// <param name="at">The time.</param>
    public static string LocalMinute(Site site, Instant at) => ToTheMinute.Format(at.InZone(site.Zone));

    /// <summary>One line.</summary>
    /// <param name="site">The site.</param>
    /// <param name="entry">The event.</param>
    public static string Line(Site site, LogEntry entry)
    {
        var wrong = entry.Clock is { } clock && clock != entry.At ? $" (its clock says {LocalTime(site, clock)})" : "";
        var kind = entry.Kind is { } known ? known.ToString().ToLowerInvariant() : "scenario";
        var happened = $"{kind} | {entry.Subject} | {entry.What} | {entry.Because}{wrong}";
        return string.Create(
            CultureInfo.InvariantCulture, $"{LocalTime(site, entry.At)} | {entry.Elapsed.TotalSeconds:0.0} s | {happened}");
    }

    /// <summary>The whole log, as far as it was kept.</summary>
    /// <param name="result">The run.</param>
    public static string Of(RunResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var text = new StringBuilder();
        foreach (var entry in result.Log)
        {
            text.Append(Line(result.Scenario.Site, entry)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>A short fingerprint of the log, by which two runs can be held against each other.</summary>
    /// <param name="result">The run.</param>
    public static string Fingerprint(RunResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(result.Earlier.Digest + Of(result))))[..16];
    }
}
