using System.Text;
using NodaTime;
using RackController.Growing;
using static System.FormattableString;

namespace RackController.PlanFiles;

/// <summary>The tiers over time: a row for each tier, a strip for each of its places, a bar for the trays that stand there.</summary>
internal static class TierChart
{
    private const int DayWidth = 22;
    private const int StripHeight = 15;
    private const int NameWidth = 130;
    private const int HeadHeight = 22;
    private const int RowGap = 6;
    private const int DaysPerWeek = 7;

    // Crops are told apart by their names; the tints only help the eye along.
    private static readonly string[] tints = ["#8fa3ad", "#a9b18f", "#b8a58a", "#9d93b3", "#8fb0a4", "#b39797", "#a3a3a3", "#93a9c4"];

    /// <summary>Adds the chart to a page.</summary>
    /// <param name="body">The page.</param>
    /// <param name="plan">The plan.</param>
    public static void Add(StringBuilder body, Plan plan)
    {
        var tiers = plan.Request.Space.Tiers;
        var first = plan.Request.Today;
        var days = Math.Max(1, Period.DaysBetween(first, plan.Batches.Select(one => one.Timing.Harvest).DefaultIfEmpty(first).Max()));
        var tops = new int[tiers.Length + 1];
        tops[0] = HeadHeight;
        for (var tier = 0; tier < tiers.Length; tier++)
        {
            tops[tier + 1] = tops[tier] + (tiers[tier].Kind.Places * StripHeight) + RowGap;
        }

        var width = NameWidth + (days * DayWidth);
        body.Append("<section class=\"wide\">\n<h2>Tiers</h2>\n<p class=\"note\">A strip for each insert tray. ")
            .Append("Where a bar ends, trays are harvested or moved.</p>\n<div class=\"scroll\"><svg class=\"tiers\" role=\"img\" ")
            .Append("aria-label=\"Which trays stand on which tier, day by day\" ")
            .Append(Invariant($"width=\"{width}\" height=\"{tops[^1]}\" viewBox=\"0 0 {width} {tops[^1]}\" "))
            .Append("xmlns=\"http://www.w3.org/2000/svg\">\n");
        AddGrid(body, first, days, tops[^1]);
        for (var tier = 0; tier < tiers.Length; tier++)
        {
            body.Append(Invariant(
                $"<text class=\"name\" x=\"0\" y=\"{tops[tier] + StripHeight}\">{PageParts.Text(tiers[tier].Name)}</text>"))
                .Append(Invariant($"<rect class=\"row\" x=\"{NameWidth}\" y=\"{tops[tier]}\" width=\"{days * DayWidth}\" "))
                .Append(Invariant($"height=\"{tiers[tier].Kind.Places * StripHeight}\"/>\n"));
        }

        var crops = plan.Batches.Select(one => one.Batch.Crop.Name).Distinct().Order(StringComparer.Ordinal).ToList();
        foreach (var bar in Strips.Of(plan))
        {
            AddBar(body, bar, first, tops[bar.Tier], tints[crops.IndexOf(bar.Batch.Batch.Crop.Name) % tints.Length]);
        }

        body.Append("</svg></div>\n</section>\n");
    }

    private static void AddBar(StringBuilder body, StripBar bar, LocalDate first, int top, string tint)
    {
        var name = bar.Batch.Batch.Crop.Name;
        var from = Period.DaysBetween(first, LocalDate.Max(first, bar.From));
        var width = (Period.DaysBetween(first, bar.Until) - from) * DayWidth;
        var (left, y) = (NameWidth + (from * DayWidth), top + (bar.Strip * StripHeight));
        body.Append("<g><title>")
            .Append(PageParts.Text($"{bar.Batch.Lot}: {name}, {PlanDates.Span(bar.From, bar.Until.PlusDays(-1))}")).Append("</title>")
            .Append(Invariant($"<rect x=\"{left + 1}\" y=\"{y + 1}\" width=\"{width - 2}\" height=\"{StripHeight - 2}\" fill=\"{tint}\"/>"))
            .Append(Invariant($"<text x=\"{left + 4}\" y=\"{y + 11}\">{PageParts.Text(Shortened(name, width))}</text></g>\n"));
    }

    private static void AddGrid(StringBuilder body, LocalDate first, int days, int height)
    {
        for (var day = 0; day <= days; day++)
        {
            var date = first.PlusDays(day);
            if (date.DayOfWeek != IsoDayOfWeek.Monday)
            {
                continue;
            }

            var x = NameWidth + (day * DayWidth);
            body.Append(Invariant($"<line x1=\"{x}\" x2=\"{x}\" y1=\"0\" y2=\"{height}\"/>"));
            if (days - day >= DaysPerWeek / 2)
            {
                body.Append(Invariant(
                    $"<text class=\"week\" x=\"{x + 4}\" y=\"12\">{PageParts.Text(PlanDates.DayOfMonth(date))}</text>\n"));
            }
        }
    }

    // A letter is about six and a half units wide.
    private static string Shortened(string name, int width) =>
        name[..Math.Clamp((width - 6) * 2 / 13, 1, name.Length)];
}
