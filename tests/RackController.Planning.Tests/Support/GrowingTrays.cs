using NodaTime;
using RackController.Growing;

namespace RackController.Planning.Tests;

/// <summary>Plans that are renewed in the middle of a season: the same orders some days later, with what has been sown meanwhile.</summary>
internal static class GrowingTrays
{
    /// <summary>The request on a later day, if a grower did until then what a plan says.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="days">How many days later.</param>
    public static PlanRequest Later(Plan plan, int days)
    {
        var today = plan.Request.Today.PlusDays(days);
        var missed = plan.Shortfalls.Select(one => one.Order).ToHashSet();
        var sown = plan.Batches.Where(one => one.Timing.Sow < today && one.Timing.Harvest >= today).ToList();
        return plan.Request with
        {
            Today = today,
            Orders = [.. plan.Request.Orders.Where(order => order.Due >= today && !missed.Contains(order)
                && plan.Batches.Any(one => one.Batch.Orders.Contains(order) && one.Timing.Harvest >= today))],
            Growing = [.. sown.Select((one, line) => Growing(one, today, line))],
        };
    }

    private static Batch Growing(PlannedBatch one, LocalDate today, int line) => new()
    {
        Crop = one.Batch.Crop,
        Trays = one.Batch.Trays,
        Due = one.Timing.Sow.PlusDays(one.Batch.Crop.MostDays),
        IsLive = false,
        Orders = [],
        UnderWay = new UnderWay(
            one.Timing.Sow, one.Timing.Lit < today ? one.Timing.Lit : null,
            one.Stays.Where(stay => stay.From < today && stay.Until >= today)
                .Select(stay => $"north/tier {stay.Tier + 1}").FirstOrDefault(), line),
    };
}
