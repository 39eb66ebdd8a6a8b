using System.Text;

namespace RackController.Bench;

/// <summary>Light, water and electricity of a run, and what tripped.</summary>
internal static class TotalsSection
{
    public static void Write(StringBuilder html, RunResult result)
    {
        html.Append("<section>\n<h2>Light, water, electricity</h2>\n<div class=\"scroll\"><table>\n");
        html.Head("tier", "light a day", "daily light integral").Append("<tbody>\n");
        foreach (var rack in result.Racks)
        {
            foreach (var light in rack.TierLights.Reverse())
            {
                html.Row(
                    $"{result.Scenario.Site[rack.Rack].Name}/tier {light.TierNumber}",
                    light.HoursPerDay is { } hours ? $"{hours:0.0} h" : "no whole day",
                    light.DailyMolPerM2 is { } dli ? $"{dli:0.0} mol/m²/d" : "no whole day");
            }
        }

        html.Append("</tbody></table></div>\n<div class=\"scroll\"><table>\n");
        html.Head("load", "on for", "came on", "drew").Append("<tbody>\n");
        foreach (var load in result.Loads)
        {
            html.Row(
                result.Scenario.Site[load.Load].Name, Spans.Words(load.Powered),
                load.SwitchedOn == 1 ? "once" : $"{load.SwitchedOn} times", $"{load.EnergyKWh:0.00} kWh");
        }

        html.Append("</tbody></table></div>\n<ul class=\"plain\">\n");
        foreach (var rack in result.Racks)
        {
            Item(html, TotalsWords.Of(result, rack));
            Item(html, TotalsWords.Reservoir(result, rack));
        }

        foreach (var energy in TotalsWords.Energy(result))
        {
            Item(html, energy);
        }

        Item(html, $"interlock trips: {TotalsWords.Listed(result.Trips)}");
        Item(html, $"alarms raised: {TotalsWords.Listed(result.Alarms)}");
        html.Append("</ul>\n</section>\n");
    }

    private static void Item(StringBuilder html, string text) => html.Append("<li>").Append(Html.Text(text)).Append("</li>\n");
}
