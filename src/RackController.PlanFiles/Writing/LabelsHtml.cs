using System.Text;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>A label for every tray that is still to be sown: lot code, crop, days and for whom. To be printed and cut, by the day of
/// sowing.</summary>
public static class LabelsHtml
{
    /// <summary>Writes the page.</summary>
    /// <param name="plan">The plan.</param>
    public static string Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var body = new StringBuilder();
        foreach (var day in plan.Batches.Where(one => one.Batch.UnderWay is null).GroupBy(one => one.Timing.Sow))
        {
            body.Append("<section class=\"sheet\">\n<h2>").Append(PageParts.Text($"To be sown on {PlanDates.Full(day.Key)}"))
                .Append("</h2>\n<div class=\"labels\">\n");
            foreach (var one in day)
            {
                for (var tray = 1; tray <= one.Batch.Trays; tray++)
                {
                    AddLabel(body, one, tray);
                }
            }

            body.Append("</div>\n</section>\n");
        }

        return PageParts.Page($"Tray labels: {plan.Request.Site}", body.ToString());
    }

    private static void AddLabel(StringBuilder body, PlannedBatch one, int tray) => body
        .Append($"<div class=\"label\"><b>{PageParts.Text(one.Batch.Crop.Name)}</b><span class=\"lot\">{PageParts.Text(one.Lot)}</span>")
        .Append($"<span>{PageParts.Text($"tray {tray} of {one.Batch.Trays}")}</span>")
        .Append($"<span>{PageParts.Text($"sown {PlanDates.Day(one.Timing.Sow)}")}</span>")
        .Append($"<span>{PageParts.Text($"light {PlanDates.Day(one.Timing.Lit)}")}</span>")
        .Append($"<span>{PageParts.Text($"harvest {PlanDates.Day(one.Timing.Harvest)}")}</span>")
        .Append("<span class=\"for\">")
        .Append(PageParts.Text(string.Join(", ", one.Batch.Orders.Select(order => order.Customer).Distinct()))).Append("</span></div>\n");
}
