using System.Text;

namespace RackController.Bench;

/// <summary>Cause-and-effect charts as Markdown.</summary>
public static class ChartMarkdown
{
    /// <summary>Writes the charts of a site as one document.</summary>
    /// <param name="charts">The charts of one site, at least one.</param>
    public static string Of(IReadOnlyList<RackChart> charts)
    {
        ArgumentNullException.ThrowIfNull(charts);
        var text = new StringBuilder();
        text.Append($"# Cause and effect: {Cell(charts[0].Site.Name)}\n\n{ChartWords.Legend}\n");
        foreach (var chart in charts)
        {
            Chart(text, chart);
        }

        return text.Append($"\n{ChartWords.Caution}\n").ToString();
    }

    private static void Chart(StringBuilder text, RackChart chart)
    {
        text.Append($"\n## {Cell(chart.Rack.Name)}\n\n");
        Row(text, ["row", "cause", "limits", .. chart.Columns.Select(column => column.Title), "comes back"]);
        Row(text, ["---", "---", "---", .. chart.Columns.Select(_ => "---"), "---"]);
        foreach (var line in chart.Lines)
        {
            Row(text, [$"`{line.Row.Id}`", line.Cause, line.Settings, .. line.Effects, line.Row.ComesBack]);
        }

        text.Append("\nWhat a person is told:\n\n");
        Row(text, ["row", "priority", "respond", "if nobody does", "what to do"]);
        Row(text, ["---", "---", "---", "---", "---"]);
        foreach (var (row, alarm) in ChartWords.Alarms(chart))
        {
            Row(text, [$"`{row.Id}`", ChartWords.Priority(alarm), alarm.RespondWithin, alarm.Consequence, alarm.Action]);
        }

        if (!chart.Lacking.IsEmpty)
        {
            text.Append("\nRows that this rack lacks:\n\n");
            foreach (var gap in chart.Lacking)
            {
                text.Append($"- `{gap.Row.Id}` at {Cell(gap.Place)} needs {gap.Row.Needs}: {gap.Row.Cause}\n");
            }
        }
    }

    private static void Row(StringBuilder text, IEnumerable<string> cells) =>
        text.Append("| ").AppendJoin(" | ", cells.Select(Cell)).Append(" |\n");

    private static string Cell(string words) => words.Replace("|", "\\|", StringComparison.Ordinal);
}
