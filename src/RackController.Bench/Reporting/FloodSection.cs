using System.Text;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Every flood with the fill and drain times of its trays.</summary>
internal static class FloodSection
{
    public static void Write(StringBuilder html, RunResult result)
    {
        var site = result.Scenario.Site;
        html.Append("<section>\n<h2>Floods</h2>\n");
        if (result.Floods.IsEmpty)
        {
            html.Append("<p>There was none.</p>\n</section>\n");
            return;
        }

        html.Append("<p class=\"note\">Each tray: fill in minutes · drain in minutes · greatest depth in mm. Fill counts from the ")
            .Append("pump's start until the water stood within a tenth of the standpipe, drain from the pump's stop until less ")
            .Append($"than {FloodTray.DrainedBelowMm:0} mm were left.</p>\n");
        foreach (var rack in site.Racks)
        {
            html.Append("<div class=\"scroll\"><table><caption>").Append(Html.Text(rack.Name)).Append("</caption>\n");
            html.Head(["began", "pump ran", .. rack.Tiers.Select(tier => $"tier {tier.Number}")]);
            html.Append("<tbody>\n");
            var kept = result.Floods.Count(flood => flood.Rack == rack.Id);
            var earlier = result.FloodTotals[rack.Id.Index].Count - kept;
            if (earlier > 0)
            {
                html.Row([$"{earlier} earlier", .. Enumerable.Range(0, rack.Tiers.Length + 1).Select(_ => "")]);
            }

            foreach (var flood in result.Floods.Where(flood => flood.Rack == rack.Id))
            {
                html.Row([
                    LogText.LocalMinute(site, flood.At), Spans.Words(flood.PumpRan), .. flood.Trays.Select(Tray),
                ]);
            }

            html.Append("</tbody></table></div>\n");
        }

        html.Append("</section>\n");
    }

    private static string Tray(TrayFlood tray) => $"{Minutes(tray.Filled)} · {Minutes(tray.Drained)} · {tray.PeakMm:0}";

    private static string Minutes(Duration? length) => length is { } known ? $"{known.TotalMinutes:0.0}" : "never";
}
