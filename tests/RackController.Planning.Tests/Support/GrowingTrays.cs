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
            Growing = [.. sown.SelectMany((one, line) => Growing(one, today, line))],
        };
    }

    /// <summary>A request for nothing, with radish that came into the light on the day before and stands on tiers of four places.</summary>
    /// <param name="standing">On which tiers, and with how many trays.</param>
    public static PlanRequest On(params (string Tier, int Trays)[] standing)
    {
        var today = SmallRequests.Today;
        var stage = new LitStage
        {
            Name = "light",
            Days = new WholeBounds(4, 4),
            DailyLightMolPerM2D = new Bounds(8, 12),
            PpfdUmolPerM2S = new Bounds(100, 250),
            PhotoperiodH = new Bounds(12, 18),
            Floods = [new MediaFloods(null, new WholeBounds(1, 2))],
        };
        var radish = new Crop
        {
            Name = "radish",
            Kind = CropKind.Microgreen,
            Soak = Duration.Zero,
            DarkDays = new WholeBounds(2, 2),
            LitStages = [stage],
            SeedGPerTray = 20,
            YieldGPerTray = 100,
            KeepsDays = 0,
            AirC = new Bounds(18, 24),
        };
        return new PlanRequest
        {
            Site = "cellar",
            Zone = DateTimeZone.Utc,
            Space = new GrowSpace(
                [.. Enumerable.Range(1, 3).Select(number => new GrowTier("north", number, new TierKind(4, 180, 2, "coir"), 16))], 8),
            Today = today,
            Until = today.PlusDays(14),
            Work = new WorkDays([.. Enum.GetValues<IsoDayOfWeek>().Where(day => day != IsoDayOfWeek.None)]),
            MarginPercent = 0,
            Orders = [],
            Growing =
            [
                .. standing.Select((one, line) => new Batch
                {
                    Crop = radish,
                    Trays = one.Trays,
                    Due = today.PlusDays(3),
                    IsLive = false,
                    Orders = [],
                    UnderWay = new UnderWay(today.PlusDays(-3), today.PlusDays(-1), one.Tier, line + 1),
                }),
            ],
        };
    }

    // As an orders file tells of it: trays of one sowing on two tiers are two lines.
    private static IEnumerable<Batch> Growing(PlannedBatch one, LocalDate today, int line)
    {
        if (one.Timing.Lit >= today)
        {
            return [Growing(one, one.Batch.Trays, new UnderWay(one.Timing.Sow, null, null, line))];
        }

        return one.Stays.Where(stay => stay.From < today && stay.Until >= today).Select(stay =>
            Growing(one, stay.Trays, new UnderWay(one.Timing.Sow, one.Timing.Lit, $"north/tier {stay.Tier + 1}", line)));
    }

    private static Batch Growing(PlannedBatch one, int trays, UnderWay known) => new()
    {
        Crop = one.Batch.Crop,
        Trays = trays,
        Due = one.Timing.Sow.PlusDays(one.Batch.Crop.MostDays),
        IsLive = false,
        Orders = [],
        UnderWay = known,
    };
}
