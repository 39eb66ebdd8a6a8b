using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>What a plan comes to, in words, the same on every face of it.</summary>
public static class PlanWords
{
    /// <summary>The files that lie beside the report.</summary>
    public const string FilesBeside = "labels.html, plan.ics, plan.json, forecast.csv";

    /// <summary>What it comes to, each with a word in front.</summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<(string Label, string Words)> Facts(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (request, quality) = (plan.Request, plan.Quality);
        var sown = plan.Batches.Where(batch => batch.Batch.UnderWay is null).ToList();
        var growing = plan.Batches.Length - sown.Count;
        var room = request.Space;
        return
        [
            ("orders", Met(plan)),
            ("sown", $"{Count(sown.Count, "batch", "batches")} of {Count(sown.Sum(batch => batch.Batch.Trays), "tray", "trays")}"
                + (growing == 0 ? "" : $", beside {Count(growing, "batch", "batches")} that {(growing == 1 ? "grows" : "grow")} already")),
            ("lit", $"{quality.LitTierDays} tier-days. {Proof(quality)}"),
            ("moved", quality.Moves == 0 ? "nothing from tier to tier" : $"{Count(quality.Moves, "tray", "trays")} from tier to tier"),
            ("room", $"at most {Busiest(plan, IsLit)} of {room.Tiers.Sum(tier => tier.Kind.Places)} places on "
                + $"{Count(room.Tiers.Length, "tier", "tiers")}, {Busiest(plan, IsDark)} of {room.DarkTrays} in the dark"),
        ];
    }

    /// <summary>The orders that are not met; deliveries that differ in their date only are one.</summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<(string What, string Reason, string Remedy)> Shortfalls(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return
        [
            .. from one in plan.Shortfalls
               group one by (one.Order.Line, one.Order.Customer, one.Order.Crop.Name, one.Order.Amount.Words, one.Reason) into same
               let days = string.Join(", ", same.Select(one => PlanDates.Day(one.Order.Due)))
               select (
                   $"{same.Key.Words} of {same.Key.Name} for {same.Key.Customer} on {days}", same.Key.Reason,
                   string.Join("; ", same.Select(one => one.Remedy).Distinct())),
        ];
    }

    /// <summary>How many of the deliveries are met, for a line of its own.</summary>
    /// <param name="plan">The plan.</param>
    public static string Verdict(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var all = plan.Request.Orders.Length;
        var met = all - plan.Shortfalls.Length;
        return all == 0 ? "nothing is due within the plan"
            : all == 1 ? $"the one delivery is {(met == 1 ? "" : "not ")}met"
            : met == all ? $"all {all} deliveries are met"
            : met == 0 ? $"none of {all} deliveries is met"
            : $"{met} of {all} deliveries {(met == 1 ? "is" : "are")} met";
    }

    private static string Met(Plan plan)
    {
        var more = plan.Request.Orders.Length == 1 ? "it" : "more";
        return Verdict(plan) + (plan.Shortfalls.IsEmpty ? ""
            : plan.Quality.AreShortfallsProven ? $"; no plan meets {more}" : $"; whether a plan meets {more} is not proven");
    }

    private static string Proof(PlanQuality quality) => quality.LitTierDays == quality.LeastLitTierDays
        ? "No plan for these orders does with fewer"
        : $"No plan for these orders does with fewer than {quality.LeastLitTierDays}: "
            + $"this one is within {quality.GapPercent:0.0} % of the best";

    private static int Busiest(Plan plan, Func<BatchTiming, LocalDate, bool> isThere) => plan.Batches
        .SelectMany(one => one.Timing.StageStarts.Append(one.Timing.Sow))
        .Distinct()
        .Where(day => day >= plan.Request.Today)
        .Select(day => plan.Batches.Where(one => isThere(one.Timing, day)).Sum(one => one.Batch.Trays))
        .DefaultIfEmpty().Max();

    private static bool IsLit(BatchTiming timing, LocalDate day) => timing.StageOn(day) is not null;

    private static bool IsDark(BatchTiming timing, LocalDate day) => day >= timing.Sow && day < timing.Lit;

    private static string Count(int count, string one, string many) => count == 1 ? $"1 {one}" : $"{count} {many}";
}
