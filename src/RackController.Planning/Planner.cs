using System.Collections.Immutable;
using RackController.Growing;

namespace RackController.Planning;

/// <summary>
/// Makes a plan of orders: first as many of them as find room, then the fewest lit tier-days, by constraint programming, with a proof of
/// how far from the best it may be; then tiers for the trays with few moves, by a rule. The same request gives the same plan.
/// </summary>
public static class Planner
{
    // What makes room for one order alone is looked for while they are few; for many, what makes room for all says more.
    private const int MostAskedAlone = 8;

    /// <summary>Makes it.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="effort">How hard to try.</param>
    /// <param name="progress">Hears of every plan that was found on the way.</param>
    /// <returns>The plan; null when what grows already has no room, so that the request cannot be as it is told.</returns>
    /// <exception cref="SolverMissingException">The solver's libraries are not there.</exception>
    public static Plan? Make(PlanRequest request, Effort effort, Action<PlanProgress> progress)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(effort);
        try
        {
            return Search(request, effort, progress);
        }
        catch (Exception fault) when (MissingLibrary(fault) is { } missing)
        {
            throw new SolverMissingException(missing);
        }
    }

    // Whoever asks first for the library finds it missing in a static constructor; later ones are told of that.
    private static DllNotFoundException? MissingLibrary(Exception fault) =>
        fault as DllNotFoundException ?? (fault is TypeInitializationException { InnerException: { } inner } ? MissingLibrary(inner)
            : null);

    private static Plan? Search(PlanRequest request, Effort effort, Action<PlanProgress> progress)
    {
        var orders = request.Orders;
        var shortfalls = new List<Shortfall>();
        foreach (var (hopeless, reason, remedy) in Hopeless.Of(request))
        {
            shortfalls.Add(new Shortfall(hopeless, reason, remedy));
            orders = orders.Remove(hopeless);
        }

        var possible = request with { Orders = orders };
        var leftOut = ImmutableArray<Order>.Empty;
        var areProven = true;
        while (true)
        {
            var plan = CaseOf(possible with { Orders = [.. orders.Except(leftOut)] });
            if (Schedules.Best(plan, effort, progress) is { } schedule)
            {
                shortfalls.AddRange(WithoutRoom(possible, leftOut, effort));
                var all = leftOut.IsEmpty ? [] : RoomThatLacks.Of(CaseOf(possible), effort) ?? [];
                return Complete(request, plan, schedule, shortfalls, all, areProven);
            }

            if (MostMet.Of(plan, request, effort) is not { LeftOut.IsEmpty: false } choice)
            {
                return null;
            }

            leftOut = leftOut.AddRange(choice.LeftOut);
            areProven &= choice.IsProven;
            leftOut = choice.IsProven ? leftOut : LetBackIn(possible, leftOut, effort);
        }
    }

    // What was left out in haste may find room all the same: each is tried beside all that are met, in the order of the file.
    private static ImmutableArray<Order> LetBackIn(PlanRequest possible, ImmutableArray<Order> leftOut, Effort effort)
    {
        foreach (var order in leftOut.OrderBy(order => possible.Orders.IndexOf(order)))
        {
            if (Lacks(possible, leftOut, order, effort) is { IsEmpty: true })
            {
                leftOut = leftOut.Remove(order);
            }
        }

        return leftOut;
    }

    private static ImmutableArray<ExtraRoom>? Lacks(PlanRequest possible, ImmutableArray<Order> leftOut, Order order, Effort effort) =>
        RoomThatLacks.Of(CaseOf(possible with { Orders = [.. possible.Orders.Except(leftOut.Remove(order))] }), effort);

    private static PlanningCase CaseOf(PlanRequest request) => PlanningCase.Of(
        request,
        from batch in Batching.Of(request.Orders, request.Growing, request.MarginPercent)
        select (batch, BatchTimings.Of(batch, request.Work, request.Today)));

    private static IEnumerable<Shortfall> WithoutRoom(PlanRequest possible, ImmutableArray<Order> leftOut, Effort effort)
    {
        foreach (var order in leftOut)
        {
            var lacks = leftOut.Length > MostAskedAlone ? [] : Lacks(possible, leftOut, order, effort) ?? [];
            yield return new Shortfall(
                order,
                lacks.IsEmpty ? "there is no room beside the orders that are met"
                    : lacks.All(room => room.IsDark) ? "blackout space is full"
                    : lacks.Any(room => room.IsDark) ? "tiers and blackout space are full"
                    : "every tier that suits it is full",
                lacks.IsEmpty ? "the room that is named for all of them" : string.Join(", and ", lacks.Select(room => room.Words)));
        }
    }

    private static Plan Complete(
        PlanRequest request, PlanningCase plan, Schedule schedule, List<Shortfall> shortfalls, ImmutableArray<ExtraRoom> lacks,
        bool areProven)
    {
        var (stays, lamps) = Layouts.Of(plan, schedule);
        var order = schedule.Batches.Index()
            .OrderBy(one => one.Item.Timing.Sow).ThenBy(one => one.Item.Timing.Harvest)
            .ThenBy(one => one.Item.Case.Batch.Crop.Name, StringComparer.Ordinal).ThenBy(one => one.Index)
            .ToList();
        var codes = LotCodes.Of(order.Select(one => (one.Item.Case.Batch, one.Item.Timing)));
        var batches = order
            .Select((one, place) => new PlannedBatch(one.Item.Case.Batch, codes[place], one.Item.Timing, stays[one.Index]))
            .ToImmutableArray();
        return new Plan
        {
            Request = request,
            Batches = batches,
            Shortfalls = [.. shortfalls.OrderBy(one => request.Orders.IndexOf(one.Order))],
            Remedy = lacks,
            Lamps = lamps,
            Quality = new PlanQuality(
                schedule.LitTierDays, schedule.LeastLitTierDays, batches.Sum(one => Moves.Of(one, request).Sum(move => move.Trays)),
                areProven),
        };
    }
}
