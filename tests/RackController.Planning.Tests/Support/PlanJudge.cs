using NodaTime;
using RackController.Growing;

namespace RackController.Planning.Tests;

/// <summary>
/// Says what is wrong with a plan, day by day and tray by tray, from what was asked for and what the plan says. It knows nothing of
/// how plans are made: no solver, no classes, no groups, no spans, and none of the product's arithmetic but the days of a calendar.
/// </summary>
internal sealed class PlanJudge(Plan plan)
{
    private readonly PlanRequest request = plan.Request;
    private readonly List<string> faults = [];

    /// <summary>Everything that is wrong.</summary>
    public IReadOnlyList<string> Faults()
    {
        foreach (var one in plan.Batches)
        {
            JudgeDays(one);
        }

        var last = plan.Batches.Select(one => one.Timing.Harvest).DefaultIfEmpty(request.Today).Max();
        var lit = 0;
        for (var day = request.Today; day < last; day = day.PlusDays(1))
        {
            lit += JudgeRoom(day);
        }

        Expect(lit == plan.Quality.LitTierDays, $"{lit} tier-days are lit, and {plan.Quality.LitTierDays} are claimed");
        Expect(Carried(last) == plan.Quality.Moves, $"{Carried(last)} trays are carried, and {plan.Quality.Moves} are claimed");
        Expect(plan.Quality.LeastLitTierDays <= plan.Quality.LitTierDays, "what is proven to be needed is more than what there is");
        JudgeOrders();
        Expect(plan.Batches.Select(one => one.Lot).Distinct().Count() == plan.Batches.Length, "two batches have the same lot code");
        return faults;
    }

    private void Expect(bool holds, string fault)
    {
        if (!holds)
        {
            faults.Add(fault);
        }
    }

    private void JudgeDays(PlannedBatch one)
    {
        var (batch, timing, crop) = (one.Batch, one.Timing, one.Batch.Crop);
        void Within(int days, WholeBounds bounds, string what) =>
            Expect(days >= bounds.Least && days <= bounds.Most, $"{one.Lot}: {what} takes {days} days");

        Within(Period.DaysBetween(timing.Sow, timing.StageStarts[0]), crop.DarkDays, "the dark");
        for (var stage = 0; stage < crop.LitStages.Length; stage++)
        {
            var end = stage + 1 < crop.LitStages.Length ? timing.StageStarts[stage + 1] : timing.Harvest;
            Within(Period.DaysBetween(timing.StageStarts[stage], end), crop.LitStages[stage].Days, crop.LitStages[stage].Name);
        }

        var hands = new List<LocalDate> { timing.Harvest };
        hands.AddRange(timing.StageStarts);
        if (batch.UnderWay is { } known)
        {
            Expect(timing.Sow == known.Sown, $"{one.Lot}: was sown on another day");
            Expect(known.Lit is null || timing.StageStarts[0] == known.Lit, $"{one.Lot}: came into the light on another day");
            hands.RemoveAll(day => day < request.Today);
        }
        else
        {
            hands.Add(timing.Sow);
            if (crop.Soak > Duration.Zero)
            {
                hands.Add(timing.Sow.PlusDays(-1));
            }
        }

        Expect(hands.All(day => day >= request.Today), $"{one.Lot}: needs hands before the plan begins");
        Expect(hands.All(day => request.Work.Days.Contains(day.DayOfWeek)), $"{one.Lot}: needs hands on a day without work");
        var waits = Period.DaysBetween(timing.Harvest, batch.Due);
        Expect(waits >= 0 && waits <= (batch.IsLive ? 1 : crop.KeepsDays), $"{one.Lot}: waits {waits} days after its harvest");
    }

    // One day: everybody stands where they suit, with whom they agree, under a lamp that is on for as long as they want.
    private int JudgeRoom(LocalDate day)
    {
        var standing = new List<(PlannedBatch One, LitStage Stage, int Tier, int Trays)>();
        foreach (var one in plan.Batches)
        {
            var here = one.Stays.Where(stay => stay.From <= day && day < stay.Until).ToList();
            var isLit = day >= one.Timing.StageStarts[0] && day < one.Timing.Harvest;
            Expect(here.Sum(stay => stay.Trays) == (isLit ? one.Batch.Trays : 0), $"{day}: {one.Lot} has other trays on tiers than in all");
            var stage = one.Timing.StageStarts.Count(start => start <= day) - 1;
            standing.AddRange(here.Select(stay => (one, one.Batch.Crop.LitStages[stage], stay.Tier, stay.Trays)));
        }

        Expect(standing.All(one => one.Trays > 0), $"{day}: a tier holds no trays of a lot that is said to stand there");
        foreach (var tier in standing.GroupBy(one => one.Tier))
        {
            JudgeTier(day, request.Space.Tiers[tier.Key], tier.Key, [.. tier.Select(one => (one.One.Lot, one.Stage, one.Trays))]);
        }

        var dark = plan.Batches.Where(one => one.Timing.Sow <= day && day < one.Timing.StageStarts[0]).Sum(one => one.Batch.Trays);
        Expect(dark <= request.Space.DarkTrays, $"{day}: {dark} trays stand in the dark");
        return standing.Select(one => one.Tier).Distinct().Count();
    }

    private void JudgeTier(LocalDate day, GrowTier tier, int place, List<(string Lot, LitStage Stage, int Trays)> standing)
    {
        Expect(standing.Sum(one => one.Trays) <= tier.Kind.Places, $"{day}: {tier.Name} holds too many trays");
        var lamp = plan.Lamps.Where(one => one.Tier == place && one.From <= day && day < one.Until).Select(one => one.PhotoperiodH)
            .ToList();
        Expect(lamp.Count == 1, $"{day}: the lamp of {tier.Name} is set {lamp.Count} times");
        foreach (var (lot, stage, _) in standing)
        {
            // The daily light integral by its definition: umol/m2/s times seconds, in mol.
            var molPerM2D = tier.Kind.PpfdUmolPerM2S * lamp[0] * 3600 / 1e6;
            var floods = stage.Floods.FirstOrDefault(one => one.Media == tier.Kind.Media) ?? stage.Floods.Single(one => one.Media is null);
            Expect(IsWithin(molPerM2D, stage.DailyLightMolPerM2D), $"{day}: {lot} gets {molPerM2D:0.00} mol/m2/d on {tier.Name}");
            Expect(IsWithin(lamp[0], stage.PhotoperiodH), $"{day}: {lot} is lit for {lamp[0]} h on {tier.Name}");
            Expect(IsWithin(tier.Kind.PpfdUmolPerM2S, stage.PpfdUmolPerM2S), $"{day}: {lot} does not bear the lamp of {tier.Name}");
            Expect(
                tier.Kind.FloodsPerDay >= floods.PerDay.Least && tier.Kind.FloodsPerDay <= floods.PerDay.Most,
                $"{day}: {lot} is not flooded as it wants on {tier.Name}");
        }
    }

    // Who stands somewhere today where fewer of it stood yesterday was carried there, if all of it was on tiers yesterday.
    private int Carried(LocalDate last)
    {
        var carried = 0;
        foreach (var one in plan.Batches)
        {
            // Before the plan's first day, trays stand where the grower says.
            int On(int tier, LocalDate day) => day < request.Today
                ? request.Space.Tiers[tier].Name == one.Batch.UnderWay?.Tier ? one.Batch.Trays : 0
                : one.Stays.Where(stay => stay.Tier == tier && stay.From <= day && day < stay.Until).Sum(stay => stay.Trays);

            var from = one.Batch.UnderWay?.Tier is null ? LocalDate.Max(request.Today, one.Timing.StageStarts[0]).PlusDays(1)
                : request.Today;
            for (var day = from; day < one.Timing.Harvest && day < last;
                day = day.PlusDays(1))
            {
                carried += Enumerable.Range(0, request.Space.Tiers.Length)
                    .Sum(tier => Math.Max(0, On(tier, day) - On(tier, day.PlusDays(-1))));
            }
        }

        return carried;
    }

    private static bool IsWithin(double value, Bounds bounds) => value >= bounds.Least - 1e-4 && value <= bounds.Most + 1e-4;

    // Every order is either met, with its margin, or named.
    private void JudgeOrders()
    {
        var missed = plan.Shortfalls.Select(one => one.Order).ToHashSet();
        var met = request.Orders.Where(order => !missed.Contains(order)).ToList();
        Expect(missed.All(request.Orders.Contains), "an order is missed that nobody placed");
        foreach (var wanted in met.GroupBy(order => (order.Crop, order.Due, IsLive: order.Amount is LiveTrays)))
        {
            var trays = plan.Batches
                .Where(one => one.Batch.Crop == wanted.Key.Crop && one.Batch.Due == wanted.Key.Due && one.Batch.IsLive == wanted.Key.IsLive)
                .Where(one => !one.Batch.Orders.IsEmpty)
                .Sum(one => one.Batch.Trays);
            var needed = wanted.Sum(order => order.Amount is LiveTrays live
                ? live.Count : ((CutWeight)order.Amount).WeightG / order.Crop.YieldGPerTray);
            Expect(trays >= (needed * (1 + (request.MarginPercent / 100))) - 1e-6, $"{wanted.First().Words}: {trays} trays are too few");
        }

        Expect(plan.Batches.Where(one => one.Batch.UnderWay is not null).Sum(one => one.Batch.Trays)
            == request.Growing.Sum(one => one.Trays), "what grows already is lost");
    }
}
