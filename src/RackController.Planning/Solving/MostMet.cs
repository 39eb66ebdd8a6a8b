using System.Collections.Immutable;
using Google.OrTools.Sat;
using RackController.Growing;

namespace RackController.Planning;

/// <summary>Which orders are left out where not all find room: as few trays as possible, and of as many trays those that the grower
/// wrote down last.</summary>
internal static class MostMet
{
    // Weights are whole numbers: thousandths of a tenth of a tray, the last three digits for the order of the file.
    private const double WeightOfATray = 10_000;
    private const int WeightOfTheFile = 1000;

    // Grams to the tenth, and per cent, as whole numbers.
    private const double Scale = 10;

    /// <summary>Chooses them.</summary>
    /// <param name="plan">A case.</param>
    /// <param name="request">What is asked for.</param>
    /// <param name="effort">How hard to try.</param>
    /// <returns>The orders to leave out, and whether it is proven that no fewer will do; null when not even what grows already has
    /// room.</returns>
    public static (ImmutableArray<Order> LeftOut, bool IsProven)? Of(PlanningCase plan, PlanRequest request, Effort effort)
    {
        var model = new CpModel();
        var use = new RoomUse(model, plan, canShrink: true);
        RoomLimits.Add(use, plan);
        var orders = plan.Batches.SelectMany(one => one.Batch.Orders).Distinct().ToImmutableArray();
        var isMet = orders.ToDictionary(order => order, order => model.NewBoolVar(order.Words));
        foreach (var supplies in plan.Batches.Index().Where(one => !one.Item.Batch.Orders.IsEmpty)
            .GroupBy(one => (one.Item.Batch.Crop, one.Item.Batch.Due, one.Item.Batch.IsLive)))
        {
            var trays = LinearExpr.NewBuilder();
            foreach (var (index, one) in supplies)
            {
                if (use.Trays[index] is { } shares)
                {
                    trays.AddSum(shares);
                }
                else
                {
                    trays.Add(one.Batch.Trays * LinearExpr.Sum(use.Ways[index]));
                }
            }

            AddSupply(model, trays, supplies.First().Item.Batch, isMet, request.MarginPercent);
        }

        var missed = LinearExpr.NewBuilder();
        foreach (var (index, order) in orders.Index())
        {
            missed.AddTerm((LinearExpr)(1 - isMet[order]), Weight(order, index, orders.Length));
        }

        model.Minimize(missed);
        var solver = effort.Solver("");
        var status = solver.Solve(model);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? ([.. orders.Where(order => !solver.BooleanValue(isMet[order]))], status == CpSolverStatus.Optimal)
            : null;
    }

    private static void AddSupply(
        CpModel model, LinearExprBuilder trays, Batch batch, Dictionary<Order, BoolVar> isMet, double marginPercent)
    {
        var wanted = LinearExpr.NewBuilder();
        foreach (var order in batch.Orders)
        {
            wanted.AddTerm(isMet[order], Scaled(QuantityOf(order) * (100 + marginPercent)));
        }

        model.Add(wanted <= trays * Scaled(100 * (batch.IsLive ? 1 : batch.Crop.YieldGPerTray)));
    }

    private static long Scaled(double value) => (long)Math.Round(value * Scale);

    private static double QuantityOf(Order order) => order.Amount switch
    {
        LiveTrays live => live.Count,
        CutWeight cut => cut.WeightG,
        _ => throw new Model.InvariantBrokenException("every amount is a number"),
    };

    private static long Weight(Order order, int index, int count)
    {
        var trays = QuantityOf(order) / (order.Amount is LiveTrays ? 1 : order.Crop.YieldGPerTray);
        return (WeightOfTheFile * (long)Math.Ceiling(trays * WeightOfATray / WeightOfTheFile)) + (
            (count - index) * (WeightOfTheFile - 1) / count);
    }
}
