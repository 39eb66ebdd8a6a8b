using System.Text;

namespace RackController.Bench;

/// <summary>
/// The outcome of a run as one HTML file for people: the verdict, the expectations with their moments, charts, floods and
/// the event log. It holds everything that it shows, fetches nothing, and reads without scripts too, but for the charts.
/// </summary>
public static class HtmlReport
{
    /// <summary>Writes the page.</summary>
    /// <param name="result">The run.</param>
    public static string Of(RunResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var body = new StringBuilder();
        VerdictSection.Write(body, result);
        ExpectationSection.Write(body, result);
        body.Append(PageFiles.Read("charts.html"));
        FloodSection.Write(body, result);
        AdviceSection.Write(body, result);
        TotalsSection.Write(body, result);
        LogSection.Write(body, result);
        body.Append(PageFiles.Read("cautions.html"));
        return new StringBuilder(PageFiles.Read("report.html"))
            .Replace("{{title}}", Html.Text($"{result.Scenario.Name}: {(result.Passed ? "held" : "did not hold")}"))
            .Replace("{{style}}", PageFiles.Read("report.css"))
            .Replace("{{body}}", body.ToString())
            .Replace("{{data}}", ChartData.Of(result))
            .Replace("{{script}}", PageFiles.Read("report.js"))
            .Replace("{{plotly}}", PageFiles.Read(ReportCharts.Library))
            .ToString();
    }
}
