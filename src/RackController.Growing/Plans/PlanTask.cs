using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>What is to be done on a day, in the order in which a morning goes.</summary>
public enum PlanTaskKind
{
    /// <summary>Cut a batch, or take its trays off the tier.</summary>
    Harvest,

    /// <summary>Hand over what was ordered.</summary>
    Deliver,

    /// <summary>Carry trays from one tier to another.</summary>
    Move,

    /// <summary>Carry trays out of the dark onto a tier.</summary>
    Light,

    /// <summary>Change how long a lamp is on.</summary>
    Lamp,

    /// <summary>Top up, change or flush a reservoir.</summary>
    Reservoir,

    /// <summary>Sow trays.</summary>
    Sow,

    /// <summary>Put seed into water, in the evening.</summary>
    Soak,
}

/// <summary>One thing to do.</summary>
/// <param name="Date">On which day.</param>
/// <param name="Kind">What kind of thing.</param>
/// <param name="Subject">Lot, tier or customer: whom it is about.</param>
/// <param name="Gist">What it is about in a word or two, for a calendar: <c>6 radish</c>.</param>
/// <param name="Words">What to do, as a sentence to a person without a full stop.</param>
public sealed record PlanTask(LocalDate Date, PlanTaskKind Kind, string Subject, string Gist, string Words);

/// <summary>What a plan asks of people, day by day.</summary>
public static class PlanTasks
{
    /// <summary>Every task of a plan, by day and then in the order in which a morning goes. What was done before the plan begins is
    /// not among them.</summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<PlanTask> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var tasks = plan.Batches.SelectMany(batch => OfBatch(plan, batch)).Concat(OfLamps(plan)).Concat(Deliveries(plan));
        return InOrder(tasks.Where(task => task.Date >= plan.Request.Today));
    }

    /// <summary>The same with what a forecast asks of people: topping up, changing and flushing reservoirs.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="forecast">What it takes.</param>
    public static ImmutableArray<PlanTask> With(Plan plan, Forecast forecast)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        return InOrder(Of(plan).Concat(
            from one in forecast.Care
            select new PlanTask(
                one.Day.Date, PlanTaskKind.Reservoir, one.Rack, $"{CareWords.Of(one.Day.Care)} {one.Rack}",
                $"{CareWords.Of(one.Day.Care)} the reservoir of {one.Rack}: {one.Day.TapL:0} L of water and about {one.Day.SaltsG:0} g of "
                + "salts, by the meter")));
    }

    private static ImmutableArray<PlanTask> InOrder(IEnumerable<PlanTask> tasks) =>
    [
        .. tasks.OrderBy(task => task.Date).ThenBy(task => task.Kind)
            .ThenBy(task => task.Subject, StringComparer.Ordinal).ThenBy(task => task.Words, StringComparer.Ordinal),
    ];

    private static IEnumerable<PlanTask> OfBatch(Plan plan, PlannedBatch planned)
    {
        var (batch, timing) = (planned.Batch, planned.Timing);
        var inShort = $"{batch.Trays} {batch.Crop.Name}";
        var what = $"{TextOfTrays(batch.Trays)} of {batch.Crop.Name} ({planned.Lot})";
        if (batch.UnderWay is null)
        {
            if (batch.Crop.IsSoaked)
            {
                yield return new PlanTask(
                    timing.Sow.PlusDays(-1), PlanTaskKind.Soak, planned.Lot, inShort,
                    $"soak {Seed(batch)}{batch.Crop.Name} for {batch.Crop.Soak.TotalHours:0.#} h ({planned.Lot})");
            }

            var where = batch.Crop.IsBlackedOut && timing.Lit > timing.Sow ? ", into the dark" : Onto(plan, planned, timing.Lit);
            yield return new PlanTask(
                timing.Sow, PlanTaskKind.Sow, planned.Lot, inShort,
                $"sow {what}{(batch.Crop.SeedGPerTray > 0 ? $", {batch.Crop.SeedGPerTray:0.#} g a tray" : "")}{where}");
        }

        if (timing.Lit > timing.Sow && batch.UnderWay?.Lit is null)
        {
            yield return new PlanTask(
                timing.Lit, PlanTaskKind.Light, planned.Lot, inShort, $"bring {what} into the light{Onto(plan, planned, timing.Lit)}");
        }

        foreach (var move in Moves.Of(planned, plan.Request))
        {
            yield return new PlanTask(
                move.Date, PlanTaskKind.Move, planned.Lot, $"{move.Trays} {batch.Crop.Name}",
                $"move {TextOfTrays(move.Trays)} of {batch.Crop.Name} ({planned.Lot}) from {plan.Request.Space.Tiers[move.From].Name} "
                + $"to {plan.Request.Space.Tiers[move.To].Name}");
        }

        yield return new PlanTask(
            timing.Harvest, PlanTaskKind.Harvest, planned.Lot, inShort,
            (batch.IsLive ? $"take {what} off the rack" : $"cut {what}") + (batch.Orders.IsEmpty ? ", which nobody has ordered" : ""));
    }

    // Lamps that are to be set alike on a day are one walk to the switches. Before the first day they are as the rack file has them.
    private static IEnumerable<PlanTask> OfLamps(Plan plan) =>
        from lamp in plan.Lamps
        let tier = plan.Request.Space.Tiers[lamp.Tier]
        where lamp.From > plan.Request.Today || lamp.PhotoperiodH != tier.ScheduledH
        group tier by (lamp.From, lamp.PhotoperiodH) into alike
        let names = string.Join(", ", alike.GroupBy(tier => tier.Rack).Select(ofRack => NamesOf(plan, ofRack)))
        select new PlanTask(
            alike.Key.From, PlanTaskKind.Lamp, names, names,
            alike.Key.PhotoperiodH > 0 ? $"light {names} for {Hours(alike.Key.PhotoperiodH)} a day" : $"leave dark, empty: {names}");

    private static string NamesOf(Plan plan, IGrouping<string, GrowTier> ofRack)
    {
        var numbers = ofRack.Select(tier => tier.Number).Order().ToList();
        return numbers.Count == 1 ? ofRack.First().Name
            : numbers.Count == plan.Request.Space.Tiers.Count(tier => tier.Rack == ofRack.Key) ? $"all of {ofRack.Key}"
            : $"{ofRack.Key}/tiers {string.Join(", ", numbers.SkipLast(1))} and {numbers[^1]}";
    }

    private static IEnumerable<PlanTask> Deliveries(Plan plan) =>
        from order in plan.Batches.SelectMany(planned => planned.Batch.Orders).Distinct()
        select new PlanTask(
            order.Due, PlanTaskKind.Deliver, order.Customer, order.Customer,
            $"deliver {order.Amount.Words} of {order.Crop.Name} to {order.Customer}");

    private static string Onto(Plan plan, PlannedBatch planned, LocalDate day)
    {
        var places = planned.Stays.Where(stay => stay.From == day).OrderBy(stay => stay.Tier).ToList();
        return places.Count == 0 ? ""
            : places.Count == 1 ? $", onto {plan.Request.Space.Tiers[places[0].Tier].Name}"
            : $", onto {string.Join(" and ", places.Select(stay => $"{plan.Request.Space.Tiers[stay.Tier].Name} ({stay.Trays})"))}";
    }

    private static string Seed(Batch batch) =>
        batch.Crop.SeedGPerTray > 0 ? $"{batch.Crop.SeedGPerTray * batch.Trays:0.#} g of seed of " : "the seed of ";

    private static string TextOfTrays(int count) => count == 1 ? "1 tray" : $"{count} trays";

    private static string Hours(double hours)
    {
        var minutes = (int)Math.Round(hours * 60);
        return minutes % 60 == 0 ? $"{minutes / 60} h" : $"{minutes / 60} h {minutes % 60} min";
    }
}
