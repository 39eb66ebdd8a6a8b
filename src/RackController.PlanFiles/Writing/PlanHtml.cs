using System.Text;
using NodaTime;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>A plan as one page for people: what it comes to, what cannot be met, a calendar, the tiers over time, what it takes, and the
/// tasks of every day with a box to tick. It holds everything that it shows, fetches nothing, and is made to be printed.</summary>
public static class PlanHtml
{
    private const int DaysPerWeek = 7;

    /// <summary>Writes the page.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="forecast">What it takes.</param>
    public static string Of(Plan plan, Forecast forecast)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(forecast);
        var body = new StringBuilder();
        var tasks = PlanTasks.With(plan, forecast);
        AddVerdict(body, plan);
        AddShortfalls(body, plan);
        AddCalendar(body, plan, tasks);
        TierChart.Add(body, plan);
        ForecastHtml.Add(body, forecast);
        AddTasks(body, tasks);
        AddBatches(body, plan);
        body.Append(PageParts.Read("plan-cautions.html"));
        return PageParts.Page($"Plan: {plan.Request.Site}", body.ToString());
    }

    private static void AddVerdict(StringBuilder body, Plan plan)
    {
        var isMet = plan.MeetsWhatIsDue;
        var verdict = PlanWords.Verdict(plan);
        body.Append($"<header class=\"verdict {(isMet ? "held" : "failed")}\">\n<p class=\"kicker\">")
            .Append(PageParts.Text(
                $"{plan.Request.Site} · {PlanDates.Full(plan.Request.Today)} until {PlanDates.Full(plan.Request.Until)}"))
            .Append($"</p>\n<h1><span aria-hidden=\"true\">{(isMet ? '✓' : '✗')}</span> ")
            .Append(PageParts.Text($"{char.ToUpperInvariant(verdict[0])}{verdict[1..]}"))
            .Append("</h1>\n<dl class=\"figures\">\n");
        foreach (var (label, words) in PlanWords.Facts(plan))
        {
            body.Append($"<dt>{PageParts.Text(label)}</dt><dd>{PageParts.Text(words)}</dd>\n");
        }

        body.Append("</dl>\n</header>\n");
    }

    private static void AddShortfalls(StringBuilder body, Plan plan)
    {
        if (plan.Shortfalls.IsEmpty)
        {
            return;
        }

        body.Append("<section>\n<h2>Not met</h2>\n<ul class=\"expectations\">\n");
        foreach (var (what, reason, remedy) in PlanWords.Shortfalls(plan))
        {
            body.Append("<li class=\"unmet\"><span class=\"mark\"><span aria-hidden=\"true\">▲</span> not met</span>")
                .Append(PageParts.Text(what))
                .Append("<p class=\"words\">").Append(PageParts.Text($"Because {reason}."))
                .Append("</p><p>").Append(PageParts.Text($"Remedy: {remedy}.")).Append("</p></li>\n");
        }

        body.Append("</ul>\n");
        if (!plan.Remedy.IsEmpty)
        {
            var room = string.Join(", and ", plan.Remedy.Select(one => one.Words));
            body.Append("<p>").Append(PageParts.Text($"To meet all of them: {room}.")).Append("</p>\n");
        }

        body.Append("</section>\n");
    }

    private static void AddCalendar(StringBuilder body, Plan plan, IReadOnlyList<PlanTask> tasks)
    {
        var byDay = tasks.ToLookup(task => task.Date);
        var last = tasks.Select(task => task.Date).DefaultIfEmpty(plan.Request.Today).Max();
        var monday = plan.Request.Today.PlusDays(1 - (int)plan.Request.Today.DayOfWeek);
        body.Append("<section class=\"wide\">\n<h2>Calendar</h2>\n<div class=\"scroll\"><table class=\"weeks\">\n<thead><tr>");
        foreach (var name in Enumerable.Range(0, DaysPerWeek).Select(day => monday.PlusDays(day).DayOfWeek))
        {
            body.Append($"<th scope=\"col\">{name}</th>");
        }

        body.Append("</tr></thead>\n<tbody>\n");
        for (; monday <= last; monday = monday.PlusDays(DaysPerWeek))
        {
            body.Append("<tr>");
            for (var day = monday; day < monday.PlusDays(DaysPerWeek); day = day.PlusDays(1))
            {
                AddDay(body, plan, day, byDay[day]);
            }

            body.Append("</tr>\n");
        }

        body.Append("</tbody></table></div>\n</section>\n");
    }

    private static void AddDay(StringBuilder body, Plan plan, LocalDate day, IEnumerable<PlanTask> tasks)
    {
        var isWork = plan.Request.Work.Has(day) && day >= plan.Request.Today;
        body.Append(isWork ? "<td>" : "<td class=\"rest\">")
            .Append($"<a class=\"date\" href=\"#d{day:uuuuMMdd}\">{PageParts.Text(PlanDates.DayOfMonth(day))}</a>");
        foreach (var kind in tasks.Where(task => task.Kind is not PlanTaskKind.Lamp).GroupBy(task => task.Kind))
        {
            body.Append($"<div><b>{PageParts.Text(TaskWords.Title(kind.Key))}</b> ")
                .Append(PageParts.Text(string.Join(", ", kind.Select(task => task.Gist).Distinct()))).Append("</div>");
        }

        body.Append("</td>");
    }

    private static void AddTasks(StringBuilder body, IReadOnlyList<PlanTask> tasks)
    {
        body.Append("<section class=\"days\">\n<h2>Day by day</h2>\n");
        foreach (var day in tasks.GroupBy(task => task.Date))
        {
            body.Append($"<div class=\"day\" id=\"d{day.Key:uuuuMMdd}\"><h3>{PageParts.Text(PlanDates.Full(day.Key))}</h3>\n")
                .Append("<ul class=\"ticks\">\n");
            foreach (var task in day)
            {
                body.Append($"<li>{PageParts.Text(TaskWords.Sentence(task))}</li>\n");
            }

            body.Append("</ul></div>\n");
        }

        body.Append("</section>\n");
    }

    private static void AddBatches(StringBuilder body, Plan plan)
    {
        body.Append("<section class=\"wide findings\">\n<h2>Batches</h2>\n<div class=\"scroll\"><table>\n<thead><tr>");
        foreach (var column in (string[])["lot", "crop", "trays", "sow", "into the light", "harvest", "due", "tiers", "air", "for"])
        {
            body.Append($"<th scope=\"col\">{column}</th>");
        }

        body.Append("</tr></thead>\n<tbody>\n");
        foreach (var one in plan.Batches)
        {
            body.Append("<tr>");
            foreach (var cell in Cells(plan, one))
            {
                body.Append($"<td>{PageParts.Text(cell)}</td>");
            }

            body.Append("</tr>\n");
        }

        body.Append("</tbody></table></div>\n</section>\n");
    }

    private static IEnumerable<string> Cells(Plan plan, PlannedBatch one) =>
    [
        one.Lot, one.Batch.Crop.Name, $"{one.Batch.Trays}", PlanDates.Day(one.Timing.Sow), PlanDates.Day(one.Timing.Lit),
        PlanDates.Day(one.Timing.Harvest), PlanDates.Day(one.Batch.Due),
        string.Join(", ", one.Stays.Select(stay => plan.Request.Space.Tiers[stay.Tier].Name).Distinct()),
        $"{one.Batch.Crop.AirC.Least:0.#} to {one.Batch.Crop.AirC.Most:0.#} °C",
        one.Batch.Orders.IsEmpty ? "nobody yet"
            : string.Join(", ", one.Batch.Orders.Select(order => $"{order.Customer} ({order.Amount.Words})")),
    ];
}
