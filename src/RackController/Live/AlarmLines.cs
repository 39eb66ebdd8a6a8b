using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Live;

/// <summary>The alarms, most urgent first: what is wrong, and where there is room what to do.</summary>
internal static class AlarmLines
{
    /// <summary>Lays them out.</summary>
    /// <param name="status">What to show.</param>
    /// <param name="width">Columns.</param>
    /// <param name="rows">The most rows.</param>
    public static List<StyledLine> Of(SiteStatus status, int width, int rows)
    {
        var alarms = status.Alarms;
        if (alarms.IsEmpty)
        {
            return [new StyledLine().Add("No alarms", Tone.Quiet)];
        }

        var withActions = rows >= alarms.Length * 2;
        var shown = alarms.Length <= rows || withActions ? alarms.Length : rows - 1;
        var lines = new List<StyledLine>();
        foreach (var alarm in alarms.Take(shown))
        {
            var tone = alarm.Priority >= AlarmPriority.High ? Tone.Urgent : Tone.Caution;
            lines.Add(new StyledLine()
                .Add(Sign(alarm), tone)
                .Add($" {alarm.Key} ", tone)
                .Add($"({alarm.Priority.InWords()}, {alarm.State.InWords()}) ", Tone.Quiet)
                .AddRest(alarm.Cause, width));
            if (withActions)
            {
                lines.Add(new StyledLine().Add("    ").AddRest(
                    $"{alarm.Action} ({alarm.RespondWithin}); else {alarm.Consequence}", width, Tone.Quiet));
            }
        }

        if (shown < alarms.Length)
        {
            lines.Add(new StyledLine().Add($"! and {alarms.Length - shown} more alarms", Tone.Caution));
        }

        return lines;
    }

    /// <summary>The number of signs says how urgent it is, so that colour need not.</summary>
    private static string Sign(Alarm alarm) => new('!', 1 + (int)alarm.Priority);
}
