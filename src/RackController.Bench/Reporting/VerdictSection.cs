using System.Text;

namespace RackController.Bench;

/// <summary>The headline of a report: held or not, and of what.</summary>
internal static class VerdictSection
{
    public static void Write(StringBuilder html, RunResult result)
    {
        var scenario = result.Scenario;
        var met = result.Verdicts.Count(verdict => verdict.IsMet);
        html.Append("<header class=\"verdict ").Append(result.Passed ? "held" : "failed").Append("\">\n<p class=\"kicker\">")
            .Append(Html.Text($"{scenario.Site.Name} · {scenario.Name}")).Append("</p>\n<h1>")
            .Append(result.Passed ? "<span aria-hidden=\"true\">✓</span> Held" : "<span aria-hidden=\"true\">✗</span> Did not hold")
            .Append("</h1>\n<p class=\"about\">").Append(Html.Text(scenario.About)).Append("</p>\n<p class=\"facts\">")
            .Append(Html.Text(
                $"From {LogText.LocalMinute(scenario.Site, scenario.Start)} ({scenario.Site.Zone.Id}) "
                + $"for {Spans.Words(scenario.Length)}. "
                + $"{met} of {result.Verdicts.Length} expectations met, {HazardsInWords(result)}. "
                + $"Event log {LogText.Fingerprint(result)}."))
            .Append("</p>\n</header>\n");
    }

    private static string HazardsInWords(RunResult result)
    {
        var accepted = result.Hazards.Count(hazard => result.Acceptance(hazard) is not null);
        var others = result.Hazards.Length - accepted;
        return (others, accepted) switch
        {
            (0, 0) => "no hazard showed",
            (0, _) => $"{accepted} accepted {(accepted == 1 ? "hazard" : "hazards")} showed",
            _ => $"{others} {(others == 1 ? "hazard" : "hazards")} showed",
        };
    }
}
