using System.Text;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>The forecast of a plan as a part of its page: what it takes by day, and what it asks of reservoirs, circuits and
/// floor.</summary>
internal static class ForecastHtml
{
    /// <summary>Adds it to a page.</summary>
    /// <param name="body">The page.</param>
    /// <param name="forecast">The forecast.</param>
    public static void Add(StringBuilder body, Forecast forecast)
    {
        body.Append("<section class=\"wide\" id=\"forecast\">\n<h2>What it takes</h2>\n<dl class=\"figures\">\n");
        foreach (var (label, words) in ForecastWords.Facts(forecast))
        {
            body.Append($"<dt>{PageParts.Text(label)}</dt><dd>{PageParts.Text(words)}</dd>\n");
        }

        body.Append("</dl>\n<p class=\"note\">").Append(PageParts.Text(ForecastWords.Assumed(forecast.Terms))).Append("</p>\n");
        ForecastChart.Add(body, forecast);
        AddTable(
            body, "Reservoirs", ["rack", "full, it lasts", "next top-up", "next change", "next flush", "rises to"],
            forecast.Racks.Select(rack => (string[])
            [
                rack.Name, ForecastWords.Lasts(rack), ForecastWords.Day(rack.NextTopUp), ForecastWords.Day(rack.NextChange),
                ForecastWords.Day(rack.NextFlush),
                $"{rack.Days.Max(day => day.EveningMsPerCm):0.00} mS/cm",
            ]));
        AddTable(
            body, "Circuits", ["circuit", "carries at most", "on", "for hours it may", "left"],
            forecast.Circuits.Select(circuit => (string[])
            [
                circuit.Name, $"{circuit.PeakA:0.0} A", PlanDates.Day(circuit.On), $"{circuit.LimitA:0.#} A",
                $"{circuit.LimitA - circuit.PeakA:0.0} A",
            ]));
        AddTable(
            body, "Floor", ["rack", "empty", "loaded", "over its floor", "in psf", "a wheel", "by"],
            forecast.Racks.Select(rack => (string[])
            [
                rack.Name, $"{rack.Floor.EmptyKg:0} kg", $"{rack.Floor.LoadedKg:0} kg",
                $"{rack.Floor.EmptyKPa:0.0} to {rack.Floor.LoadedKPa:0.0} kN/m2", $"{rack.Floor.LoadedPsf:0}",
                $"{rack.Floor.PerWheelKg:0} kg", rack.Floor.IsGuessed ? "a guess" : "the rack file",
            ]));
        body.Append("<p class=\"note\">").Append(PageParts.Text(ForecastWords.Caution)).Append("</p>\n")
            .Append("<details><summary>Day by day</summary>\n");
        AddDays(body, forecast);
        body.Append("</details>\n</section>\n");
    }

    private static void AddDays(StringBuilder body, Forecast forecast)
    {
        var care = forecast.Care.ToLookup(one => one.Day.Date);
        string[] cost = forecast.Terms.Prices is { } prices ? [prices.Currency] : [];
        AddTable(
            body, "By day", ["day", "water, L", "tap, L", "salts, g", "lamps, kWh", "all, kWh", .. cost, "harvest", "reservoirs"],
            forecast.Days.Select(day => (string[])
            [
                PlanDates.Day(day.Date), $"{day.WaterUsedL:0.0}", $"{day.TapL:0}", $"{day.SaltsG:0}",
                $"{day.LightsKWh:0.0}", $"{day.EnergyKWh:0.0}",
                .. day.Cost is { } money ? (string[])[$"{money:0.00}"] : [],
                string.Join("; ", day.Harvest.Select(one => one.Words)),
                string.Join("; ", care[day.Date].Select(one => $"{CareWords.Of(one.Day.Care)} {one.Rack}")),
            ]));
    }

    private static void AddTable(StringBuilder body, string caption, string[] columns, IEnumerable<string[]> rows)
    {
        body.Append($"<div class=\"scroll\"><table>\n<caption>{caption}</caption>\n<thead><tr>");
        foreach (var column in columns)
        {
            body.Append($"<th scope=\"col\">{PageParts.Text(column)}</th>");
        }

        body.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in rows)
        {
            body.Append("<tr>");
            foreach (var cell in row)
            {
                body.Append($"<td>{PageParts.Text(cell)}</td>");
            }

            body.Append("</tr>\n");
        }

        body.Append("</tbody></table></div>\n");
    }
}
