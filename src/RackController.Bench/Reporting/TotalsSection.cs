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
            Item(
                html,
                $"{result.Scenario.Site[rack.Rack].Name}: {rack.WaterUsedL:0.0} L of water used, {rack.SpilledL:0.0} L spilled, "
                    + $"reservoir never below {rack.ReservoirLowestL:0} L");
        }

        Item(html, $"{result.Loads.Sum(load => load.EnergyKWh):0.0} kWh drawn in all");
        Item(html, $"interlock trips: {Listed(result.Trips)}");
        Item(html, $"alarms raised: {Listed(result.Alarms)}");
        html.Append("</ul>\n</section>\n");
    }

    private static void Item(StringBuilder html, string text) => html.Append("<li>").Append(Html.Text(text)).Append("</li>\n");

    private static string Listed(IReadOnlyList<Tally> tallies) => tallies.Count == 0
        ? "none"
        : string.Join(", ", tallies.Select(tally => tally.Count == 1 ? tally.Subject : $"{tally.Subject} ({tally.Count})"));
}
