using System.Text;

namespace RackController.Bench;

/// <summary>What a campaign found as one HTML page that needs nothing beside it, neither a network nor scripts.</summary>
public static class CampaignHtml
{
    /// <summary>Writes the page.</summary>
    /// <param name="findings">The findings.</param>
    public static string Of(CampaignFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var body = new StringBuilder();
        Verdict(body, findings);
        Failures(body, findings);
        Backstops(body, findings);
        Quiet(body, findings);
        TripTimes(body, findings);
        Hazards(body, findings);
        Catalogue(body, findings);
        body.Append(PageFiles.Read("cautions.html"));
        return PageFiles.Read("plain.html")
            .Replace("{{title}}", Html.Text($"Campaign: {findings.Plan.Site.Name}"), StringComparison.Ordinal)
            .Replace("{{style}}", PageFiles.Read("report.css"), StringComparison.Ordinal)
            .Replace("{{body}}", body.ToString(), StringComparison.Ordinal);
    }

    private static void Verdict(StringBuilder body, CampaignFindings findings) => body
        .Append($"<header class=\"verdict {(findings.Passed ? "held" : "failed")}\">\n<p class=\"kicker\">")
        .Append(Html.Text($"{findings.Plan.Site.Name} · campaign")).Append("</p>\n<h1>")
        .Append(findings.Passed ? "<span aria-hidden=\"true\">✓</span> Held" : "<span aria-hidden=\"true\">✗</span> Did not hold")
        .Append($"</h1>\n<p class=\"about\">{Html.Text(CampaignWords.Failed(findings))}.</p>\n<p class=\"facts\">")
        .Append($"{Html.Text(CampaignWords.Tried(findings))}. Again: <code>{Html.Text(findings.Command)}</code></p>\n</header>\n");

    private static void Failures(StringBuilder body, CampaignFindings findings)
    {
        if (findings.Passed)
        {
            return;
        }

        Begin(body, "What failed", "scenario", "class", "what", "cases", "smallest case", "what was seen");
        foreach (var (group, index) in findings.Failures.Select((group, index) => (group, index)))
        {
            body.Row(
                $"failure-{index + 1:00}.yaml", CampaignWords.Word(group.Smallest.Class), group.Words, $"{group.Count}",
                group.Smallest.Case.Name, group.Smallest.Seen);
        }

        End(body);
    }

    private static void Hazards(StringBuilder body, CampaignFindings findings)
    {
        Begin(
            body, "Cases with a hazard, by the mode that struck",
            ["mode", "cases", .. Enum.GetValues<HazardKind>().Select(HazardWords.Title)]);
        foreach (var (mode, cases, counts) in findings.HazardsByMode)
        {
            body.Row([mode.Words, $"{cases}", .. counts.Select(count => count == 0 ? "none" : $"{count}")]);
        }

        End(body);
    }

    private static void Backstops(StringBuilder body, CampaignFindings findings)
    {
        if (findings.Backstops.IsEmpty)
        {
            return;
        }

        Begin(body, "Where a wired part had to act", "part", "what struck", "cases", "nothing else in between", "without it");
        foreach (var use in findings.Backstops)
        {
            body.Row(use.Backstop.Words(), use.Modes, $"{use.Count}", use.Prevented is { } only ? $"{only}" : "", use.Otherwise);
        }

        End(body);
    }

    private static void TripTimes(StringBuilder body, CampaignFindings findings)
    {
        Begin(
            body, "How soon a single fault was noticed", "mode", "cases", "an interlock acted", "median", "worst", "an alarm was raised",
            "median", "worst");
        foreach (var times in findings.TripTimes)
        {
            body.Row(
                times.Mode.Words, $"{times.Cases}", $"{times.Tripped}", CampaignWords.Time(times.MedianTrip),
                CampaignWords.Time(times.WorstTrip), $"{times.Alarmed}", CampaignWords.Time(times.MedianAlarm),
                CampaignWords.Time(times.WorstAlarm));
        }

        End(body);
    }

    private static void Quiet(StringBuilder body, CampaignFindings findings)
    {
        body.Append("<section class=\"findings\"><h2>False trips</h2>\n<p>")
            .Append(Html.Text(CampaignWords.FalseTrips(findings.Quiet))).Append("</p></section>\n");
        if (findings.Quiet.RackYears == 0)
        {
            return;
        }

        Begin(body, "Sensors without a fault, and what tripped for nothing", "sensors", "standard deviation of their scatter", "from");
        foreach (var alike in findings.Plan.Site.Sensors.GroupBy(sensor => sensor.Kind))
        {
            if (SensorScatter.Of(alike.Key) is { } scatter)
            {
                body.Row(string.Join(", ", alike.Select(sensor => sensor.Name)), $"{scatter.StandardDeviation}", scatter.Source);
            }
        }

        foreach (var trip in findings.Quiet.Trips)
        {
            body.Row(trip.Subject, $"{trip.Count} false trips", "");
        }

        End(body);
    }

    private static void Catalogue(StringBuilder body, CampaignFindings findings)
    {
        Begin(body, "The modes that were played", "mode", "places", "lasts", "size", "where parts are known to fail so");
        foreach (var (mode, places) in findings.Plan.Modes)
        {
            var lasts = mode.LongestLasts == NodaTime.Duration.Zero
                ? "at once"
                : $"{Spans.Words(mode.ShortestLasts)} to {Spans.Words(mode.LongestLasts)}";
            body.Row(
                mode.Words, $"{places}", lasts,
                mode.Sizes is { } sizes ? $"{TextOf.Number(sizes.Least)} to {TextOf.Number(sizes.Most)} {sizes.Unit}" : "", mode.Source);
        }

        End(body);
    }

    private static void Begin(StringBuilder body, string title, params ReadOnlySpan<string> columns) => body
        .Append($"<section class=\"findings\"><h2>{Html.Text(title)}</h2>\n<div class=\"scroll\"><table>\n")
        .Head(columns).Append("<tbody>\n");

    private static void End(StringBuilder body) => body.Append("</tbody></table></div></section>\n");
}
