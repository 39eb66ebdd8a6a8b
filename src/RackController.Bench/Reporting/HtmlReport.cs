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
        body.Append(PageFile("charts.html"));
        FloodSection.Write(body, result);
        AdviceSection.Write(body, result);
        TotalsSection.Write(body, result);
        LogSection.Write(body, result);
        body.Append(PageFile("cautions.html"));
        return new StringBuilder(PageFile("report.html"))
            .Replace("{{title}}", Html.Text($"{result.Scenario.Name}: {(result.Passed ? "held" : "did not hold")}"))
            .Replace("{{style}}", PageFile("report.css"))
            .Replace("{{body}}", body.ToString())
            .Replace("{{data}}", ChartData.Of(result))
            .Replace("{{script}}", PageFile("report.js"))
            .Replace("{{plotly}}", PageFile("plotly-basic.js"))
            .ToString();
    }

    private static string PageFile(string name)
    {
        using var stream = typeof(HtmlReport).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"the page file {name} is missing from the program");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
