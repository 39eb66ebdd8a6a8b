using System.Text;

namespace RackController.Bench;

/// <summary>Cause-and-effect charts as one HTML page that needs nothing beside it, neither a network nor scripts.</summary>
public static class ChartHtml
{
    /// <summary>Writes the page.</summary>
    /// <param name="charts">The charts of one site, at least one.</param>
    public static string Of(IReadOnlyList<RackChart> charts)
    {
        ArgumentNullException.ThrowIfNull(charts);
        var body = new StringBuilder();
        body.Append($"<header><p class=\"kicker\">Cause and effect</p><h1>{Html.Text(charts[0].Site.Name)}</h1>")
            .Append($"<p>{Html.Text(ChartWords.Legend)}</p></header>\n");
        foreach (var chart in charts)
        {
            Chart(body, chart);
        }

        body.Append($"<footer><h2>Cautions</h2><p>{Html.Text(ChartWords.Caution)}</p></footer>\n");
        return PageFiles.Read("plain.html")
            .Replace("{{title}}", Html.Text($"Cause and effect: {charts[0].Site.Name}"), StringComparison.Ordinal)
            .Replace("{{style}}", PageFiles.Read("report.css"), StringComparison.Ordinal)
            .Replace("{{body}}", body.ToString(), StringComparison.Ordinal);
    }

    private static void Chart(StringBuilder body, RackChart chart)
    {
        body.Append($"<section class=\"chart-of-rack\"><h2>{Html.Text(chart.Rack.Name)}</h2>\n<div class=\"scroll\"><table>\n");
        body.Head(["row", "cause", "limits", .. chart.Columns.Select(column => column.Title), "comes back"]).Append("<tbody>\n");
        foreach (var line in chart.Lines)
        {
            body.Row([line.Row.Id, line.Cause, line.Settings, .. line.Effects, line.Row.ComesBack]);
        }

        body.Append("</tbody></table></div>\n<h2>What a person is told</h2>\n<div class=\"scroll\"><table>\n");
        body.Head("row", "priority", "respond", "if nobody does", "what to do").Append("<tbody>\n");
        foreach (var (row, alarm) in ChartWords.Alarms(chart))
        {
            body.Row(row.Id, ChartWords.Priority(alarm), alarm.RespondWithin, alarm.Consequence, alarm.Action);
        }

        body.Append("</tbody></table></div>\n");
        if (!chart.Lacking.IsEmpty)
        {
            body.Append("<h2>Rows that this rack lacks</h2>\n<ul>\n");
            foreach (var gap in chart.Lacking)
            {
                body.Append($"<li><b>{Html.Text(gap.Row.Id)}</b> at {Html.Text(gap.Place)} needs {Html.Text(gap.Row.Needs)}: ")
                    .Append($"{Html.Text(gap.Row.Cause)}</li>\n");
            }

            body.Append("</ul>\n");
        }

        body.Append("</section>\n");
    }
}
