using System.Globalization;
using System.Text;
using NodaTime;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>
/// A plan as a calendar (iCalendar, RFC 5545), to be read by whatever keeps a person's days: for each day and kind of work one event
/// that lasts the day and blocks nothing. Each has a name (UID) of its day and kind, so that a plan made anew replaces the old one's
/// events instead of standing beside them.
/// </summary>
public static class PlanCalendar
{
    // RFC 5545, 3.1: a line is at most 75 octets without its end; what goes on begins with a blank.
    private const int MostOctets = 75;

    /// <summary>Writes the calendar.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="forecast">What it takes.</param>
    public static string Of(Plan plan, Forecast forecast)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(forecast);
        var text = new StringBuilder();
        Add(text, "BEGIN:VCALENDAR");
        Add(text, "VERSION:2.0");
        Add(text, "PRODID:-//RackController//plan//EN");
        Add(text, "CALSCALE:GREGORIAN");
        Add(text, "METHOD:PUBLISH");
        Add(text, $"NAME:{Escaped(plan.Request.Site)}");
        foreach (var work in PlanTasks.With(plan, forecast).GroupBy(task => (task.Date, task.Kind)))
        {
            AddEvent(text, plan, work.Key.Date, work.Key.Kind, [.. work]);
        }

        Add(text, "END:VCALENDAR");
        return text.ToString();
    }

    private static void AddEvent(StringBuilder text, Plan plan, LocalDate day, PlanTaskKind kind, IReadOnlyList<PlanTask> tasks)
    {
        var title = TaskWords.Title(kind);
        var gists = string.Join(", ", tasks.Select(task => task.Gist).Distinct());
        Add(text, "BEGIN:VEVENT");
        Add(text, $"UID:{Basic(day)}-{TaskWords.Key(kind)}@rackcontroller.invalid");

        // The stamp is the plan's own first day: the same orders give the same calendar.
        Add(text, $"DTSTAMP:{Basic(plan.Request.Today)}T000000Z");
        Add(text, $"DTSTART;VALUE=DATE:{Basic(day)}");
        Add(text, $"DTEND;VALUE=DATE:{Basic(day.PlusDays(1))}");
        Add(text, $"SUMMARY:{Escaped(tasks.Count == 1 ? TaskWords.Sentence(tasks[0]) : $"{title}: {gists}")}");
        Add(text, $"DESCRIPTION:{Escaped(string.Join('\n', tasks.Select(TaskWords.Sentence)))}");
        Add(text, $"CATEGORIES:{Escaped(title)}");
        Add(text, "TRANSP:TRANSPARENT");
        Add(text, "END:VEVENT");
    }

    private static string Basic(LocalDate day) => day.ToString("uuuuMMdd", CultureInfo.InvariantCulture);

    // RFC 5545, 3.3.11.
    private static string Escaped(string value) => value
        .Replace("\\", "\\\\", StringComparison.Ordinal).Replace(";", "\\;", StringComparison.Ordinal)
        .Replace(",", "\\,", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal);

    private static void Add(StringBuilder text, string line)
    {
        var octets = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            if (octets + rune.Utf8SequenceLength > MostOctets)
            {
                text.Append("\r\n ");
                octets = 1;
            }

            text.Append(rune);
            octets += rune.Utf8SequenceLength;
        }

        text.Append("\r\n");
    }
}
