using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Numbers, lengths and moments as a scenario writes them, exact to what its reader keeps.</summary>
internal static class TextOf
{
    private static readonly LocalDateTimePattern ToTheMinute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    /// <summary>A number.</summary>
    public static string Number(double value) => value.ToString("0.################", CultureInfo.InvariantCulture);

    /// <summary>A length of time, exact to the millisecond: <c>1 h 30 min 2.5 s</c>.</summary>
    public static string Length(Duration length)
    {
        var text = new StringBuilder();
        void Part(long count, string unit)
        {
            if (count > 0)
            {
                text.Append(CultureInfo.InvariantCulture, $"{count} {unit} ");
            }
        }

        var left = Math.Round((decimal)length.ToInt64Nanoseconds() / 1_000_000) / 1000;
        Part((long)(left / 86_400), "d");
        Part((long)(left % 86_400 / 3600), "h");
        Part((long)(left % 3600 / 60), "min");
        var seconds = left % 60;
        return seconds > 0 || text.Length == 0
            ? text.Append(CultureInfo.InvariantCulture, $"{seconds:0.###} s").ToString()
            : text.ToString().TrimEnd();
    }

    /// <summary>A local date and time, to the minute.</summary>
    public static string Moment(Site site, Instant at) => ToTheMinute.Format(at.InZone(site.Zone).LocalDateTime);

    /// <summary>Words between quotes.</summary>
    public static string Quoted(string words) => $"\"{words.Replace("\\", "\\\\").Replace('"', '\'')}\"";
}
