using System.Text;
using NodaTime.Text;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>The days of a forecast as a table for programs (RFC 4180): a line for each day, units in the names of the columns, numbers
/// with a point. The same plan gives the same bytes.</summary>
public static class ForecastCsv
{
    /// <summary>Writes the table.</summary>
    /// <param name="forecast">The forecast.</param>
    public static string Of(Forecast forecast)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        var text = new StringBuilder();
        Add(text,
        [
            "date", "water used (L)", "tap (L)", "salts (g)", "lamps (kWh)", "energy (kWh)",
            forecast.Terms.Prices is { Currency: var currency } ? $"cost ({currency})" : "cost",
            "cut (trays)", "alive (trays)", "cut (g)", .. forecast.Circuits.Select(circuit => $"{circuit.Name} peak (A)"),
            .. forecast.Racks.Select(rack => $"{rack.Name} reservoir (L)"),
            .. forecast.Racks.Select(rack => $"{rack.Name} conductivity (mS/cm)"),
        ]);
        foreach (var (index, day) in forecast.Days.Index())
        {
            Add(text,
            [
                LocalDatePattern.Iso.Format(day.Date), Text(day.WaterUsedL), Text(day.TapL), Text(day.SaltsG), Text(day.LightsKWh),
                Text(day.EnergyKWh), day.Cost is { } cost ? Text(cost) : "", Text(day.Harvest.Sum(one => one.CutTrays)),
                Text(day.Harvest.Sum(one => one.LiveTrays)), Text(day.Harvest.Sum(one => one.CutG)), .. day.PeakA.Select(Text),
                .. forecast.Racks.Select(rack => Text(rack.Days[index].EveningL)),
                .. forecast.Racks.Select(rack => Text(rack.Days[index].EveningMsPerCm)),
            ]);
        }

        return text.ToString();
    }

    private static string Text(double value) => $"{Math.Round(value, 3)}";

    // RFC 4180, 2.6 and 2.7: what holds a comma, a quote or an end of line stands in quotes, and a quote in it twice.
    private static void Add(StringBuilder text, string[] cells) => text.AppendJoin(',', cells.Select(cell =>
        cell.AsSpan().IndexOfAny(",\"\r\n") < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")).Append("\r\n");
}
