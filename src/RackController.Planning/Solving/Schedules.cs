using System.Collections.Immutable;
using Google.OrTools.Sat;
using RackController.Growing;

namespace RackController.Planning;

/// <summary>A batch with its days.</summary>
/// <param name="Case">The batch.</param>
/// <param name="Timing">Its days.</param>
internal sealed record ScheduledBatch(BatchCase Case, BatchTiming Timing);

/// <summary>Days for every batch, such that they find room.</summary>
/// <param name="Batches">The batches, in the order of the case.</param>
/// <param name="Lit">How many tiers are lit, by span, class and group.</param>
/// <param name="LitTierDays">Days on which a tier is lit, summed.</param>
/// <param name="LeastLitTierDays">What is proven to be needed at least.</param>
internal sealed record Schedule(
    ImmutableArray<ScheduledBatch> Batches, ImmutableArray<ImmutableArray<ImmutableArray<int>>> Lit, int LitTierDays,
    int LeastLitTierDays);

/// <summary>Looks for days such that every batch finds room and as few tiers as possible are lit.</summary>
internal static class Schedules
{
    /// <summary>The best schedule that the effort allows.</summary>
    /// <param name="plan">The case, all of which has to be met.</param>
    /// <param name="effort">How hard to try.</param>
    /// <param name="progress">Hears of every better plan.</param>
    /// <returns>The schedule; null where none was found.</returns>
    public static Schedule? Best(PlanningCase plan, Effort effort, Action<PlanProgress> progress)
    {
        var model = new CpModel();
        var use = new RoomUse(model, plan, canShrink: false);
        RoomLimits.Add(use, plan);
        model.Minimize(use.LitTierDays());
        var first = effort.FirstSolver();
        var hasFirst = first.Solve(model) is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        if (hasFirst)
        {
            progress(Progress(first, 0));
            foreach (var way in use.Ways.SelectMany(ways => ways))
            {
                model.AddHint(way, first.BooleanValue(way));
            }
        }

        var solver = effort.Solver("");
        var isBetter = solver.Solve(model) is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        if (isBetter)
        {
            progress(Progress(solver, first.WallTime()));
        }

        return isBetter || hasFirst ? Read(isBetter ? solver : first, use, plan) : null;
    }

    private static PlanProgress Progress(CpSolver solver, double beforeS) =>
        new(LitTierDays(solver), LeastLitTierDays(solver), beforeS + solver.WallTime());

    private static int LitTierDays(CpSolver solver) => (int)Math.Round(solver.ObjectiveValue);

    // A bound that a whole number misses by a hair is that number.
    private static int LeastLitTierDays(CpSolver solver) => (int)Math.Ceiling(solver.BestObjectiveBound - 1e-6);

    private static Schedule Read(CpSolver solver, RoomUse use, PlanningCase plan)
    {
        var batches = plan.Batches.Select((one, batch) =>
            new ScheduledBatch(one, one.Timings[Array.FindIndex(use.Ways[batch], going => solver.BooleanValue(going))]));
        var lit = use.Lit.Select(span => span.Select(tiers => tiers.Select(group => (int)solver.Value(group)).ToImmutableArray())
            .ToImmutableArray()).ToImmutableArray();
        return new Schedule(
            [.. batches], lit, LitTierDays(solver), LeastLitTierDays(solver));
    }
}

/// <summary>A plan that was found on the way to a better one.</summary>
/// <param name="LitTierDays">Days on which a tier is lit, summed.</param>
/// <param name="LeastLitTierDays">What is proven to be needed at least.</param>
/// <param name="AfterS">When it was found, s after the search began.</param>
public sealed record PlanProgress(int LitTierDays, int LeastLitTierDays, double AfterS);
