using System.Text;

namespace RackController.Bench;

/// <summary>What had to hold, and the moment and the causes of whatever did not; then the hazards.</summary>
internal static class ExpectationSection
{
    public static void Write(StringBuilder html, RunResult result)
    {
        html.Append("<section>\n<h2>What had to hold</h2>\n<ul class=\"expectations\">\n");
        foreach (var verdict in result.Verdicts)
        {
            Expectation(html, result, verdict);
        }

        html.Append("</ul>\n<h2>Hazards</h2>\n");
        if (result.Hazards.IsEmpty)
        {
            html.Append("<p>None showed: no water on the floor, no dry pump, no overlong run, no overloaded circuit, ")
                .Append("no lights in the heat.</p>\n");
        }
        else
        {
            Hazards(html, result);
        }

        html.Append("</section>\n");
    }

    private static void Expectation(StringBuilder html, RunResult result, Verdict verdict)
    {
        html.Append(verdict.IsMet
            ? "<li class=\"met\"><span class=\"mark\">✓ met</span> "
            : "<li class=\"unmet\"><span class=\"mark\">✗ not met</span> ");
        html.Append("<b>").Append(Html.Text(verdict.Expectation.Name)).Append("</b><p class=\"words\">")
            .Append(Html.Text(verdict.Words)).Append(Html.Text(Occasions(verdict))).Append("</p>");
        if (verdict.Failure is { } failure)
        {
            html.Append("<p class=\"seen\">").Append(Html.Text(LogText.LocalTime(result.Scenario.Site, failure.At))).Append(": ")
                .Append(Html.Text(failure.Seen)).Append("</p>");
            html.Causes(result, failure.Causes);
        }

        html.Append("</li>\n");
    }

    private static string Occasions(Verdict verdict) => verdict.Expectation is not (Within or Recovers)
        ? ""
        : $" · came about {(verdict.Judged == 1 ? "once" : $"{verdict.Judged} times")}";

    private static void Hazards(StringBuilder html, RunResult result)
    {
        html.Append("<ul class=\"expectations\">\n");
        foreach (var hazard in result.Hazards)
        {
            var acceptance = result.Acceptance(hazard);
            html.Append(acceptance is null
                    ? "<li class=\"unmet\"><span class=\"mark\">✗ hazard</span> "
                    : "<li class=\"accepted\"><span class=\"mark\">! accepted</span> ")
                .Append("<b>").Append(Html.Text(HazardWords.Title(hazard.Kind))).Append("</b><p class=\"seen\">")
                .Append(Html.Text(LogText.LocalTime(result.Scenario.Site, hazard.At))).Append(": ").Append(Html.Text(hazard.Seen))
                .Append("</p>");
            if (acceptance is not null)
            {
                html.Append("<p>Software alone cannot prevent this here. What does: ").Append(Html.Text(acceptance.Backstop))
                    .Append("</p>");
            }

            html.Causes(result, hazard.Causes).Append("</li>\n");
        }

        html.Append("</ul>\n");
    }
}
