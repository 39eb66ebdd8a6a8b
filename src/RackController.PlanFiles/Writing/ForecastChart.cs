using System.Text;
using NodaTime;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>Water, electricity and harvest over the days of a plan: three rows of bars on one calendar.</summary>
internal static class ForecastChart
{
    private const int DayWidth = 12;
    private const int NameWidth = 130;
    private const int HeadHeight = 22;
    private const int RowHeight = 70;
    private const int RowGap = 14;

    /// <summary>Adds the chart to a page.</summary>
    /// <param name="body">The page.</param>
    /// <param name="forecast">The forecast.</param>
    public static void Add(StringBuilder body, Forecast forecast)
    {
        (string Name, string Unit, string Format, Func<ForecastDay, double> Of)[] rows =
        [
            ("water", "L", "0.0", day => day.WaterUsedL),
            ("electricity", "kWh", "0.0", day => day.EnergyKWh),
            ("harvest", "trays", "0", day => day.Harvest.Sum(one => one.CutTrays + one.LiveTrays)),
        ];
        var width = NameWidth + forecast.Days.Length * DayWidth;
        var height = HeadHeight + rows.Length * (RowHeight + RowGap);
        body.Append("<div class=\"scroll\"><svg class=\"tiers bars\" role=\"img\" aria-label=\"Water, electricity and harvest by day; ")
            .Append("the table below has the same numbers\" ")
            .Append($"width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" ")
            .Append("xmlns=\"http://www.w3.org/2000/svg\">\n");
        AddWeeks(body, forecast, height);
        foreach (var (index, (name, unit, format, of)) in rows.Index())
        {
            var bottom = HeadHeight + RowHeight + index * (RowHeight + RowGap);
            var most = forecast.Days.Max(of);
            body.Append($"<text class=\"name\" x=\"0\" y=\"{bottom - RowHeight + 14}\">{name}</text>")
                .Append($"<text class=\"name\" x=\"0\" y=\"{bottom - RowHeight + 30}\">")
                .Append(PageParts.Text($"to {most.ToString(format)} {unit} a day"))
                .Append("</text>\n")
                .Append($"<line x1=\"{NameWidth}\" x2=\"{width}\" y1=\"{bottom}\" y2=\"{bottom}\"/>\n");
            foreach (var (day, one) in forecast.Days.Index())
            {
                AddBar(body, day, bottom, most > 0 ? of(one) / most : 0, PageParts.Text(
                    $"{PlanDates.Day(one.Date)}: {of(one).ToString(format)} {unit}"));
            }
        }

        body.Append("</svg></div>\n");
    }

    private static void AddBar(StringBuilder body, int day, int bottom, double share, string title)
    {
        var height = Math.Round(share * RowHeight, 1);
        if (height > 0)
        {
            body.Append($"<rect x=\"{NameWidth + day * DayWidth + 1}\" y=\"{bottom - height}\" ")
                .Append($"width=\"{DayWidth - 2}\" height=\"{height}\"><title>{title}</title></rect>\n");
        }
    }

    private static void AddWeeks(StringBuilder body, Forecast forecast, int height)
    {
        foreach (var (day, one) in forecast.Days.Index().Where(day => day.Item.Date.DayOfWeek == IsoDayOfWeek.Monday))
        {
            var x = NameWidth + day * DayWidth;
            body.Append($"<line x1=\"{x}\" x2=\"{x}\" y1=\"0\" y2=\"{height}\"/>")
                .Append($"<text class=\"week\" x=\"{x + 4}\" y=\"12\">{PageParts.Text(PlanDates.DayOfMonth(one.Date))}</text>\n");
        }
    }
}
