using System.Text;

namespace RackController.Bench;

/// <summary>Everything that happened, folded away until somebody asks.</summary>
internal static class LogSection
{
    public static void Write(StringBuilder html, RunResult result)
    {
        html.Append("<section>\n<h2>Event log</h2>\n<details id=\"log\"><summary>")
            .Append(Html.Text(Title(result)))
            .Append("</summary>\n<p><label>Show only lines with <input id=\"log-filter\" type=\"search\"></label> ")
            .Append("<output id=\"log-count\"></output></p>\n")
            .Append("<div class=\"scroll\"><table class=\"log\">\n");
        html.Head("when", "what kind", "subject", "what", "because").Append("<tbody>\n");
        foreach (var entry in result.Log)
        {
            html.Row(
                LogText.LocalTime(result.Scenario.Site, entry.At),
                entry.Kind is { } kind ? kind.ToString().ToLowerInvariant() : "scenario",
                entry.Subject, entry.What, entry.Because);
        }

        html.Append("</tbody></table></div>\n</details>\n</section>\n");
    }

    private static string Title(RunResult result) => result.Earlier.Count == 0
        ? $"{result.Log.Count} events"
        : $"the last {result.Log.Count} events, after {result.Earlier.Count} that are counted and not kept";
}
