using System.Collections.Immutable;
using Google.OrTools.Sat;

namespace RackController.Planning;

/// <summary>
/// Which class of tiers the trays of each batch stand on, span by span, once all days are settled. As few tiers are lit in each span as
/// the schedule has it; among the ways to do that, trays change their class as rarely as the solver can find.
/// </summary>
internal sealed class ClassSpread
{
    // One class needs no choice, and a choice that is not proven best costs somebody a walk, nothing else.
    private const double Work = 5;

    private readonly ImmutableDictionary<(int Batch, int Span, int Class), int> trays;

    private ClassSpread(ImmutableDictionary<(int Batch, int Span, int Class), int> trays,
        ImmutableArray<ImmutableArray<ImmutableArray<int>>> lit)
    {
        this.trays = trays;
        Lit = lit;
    }

    /// <summary>How many tiers are lit, by span, class and group.</summary>
    public ImmutableArray<ImmutableArray<ImmutableArray<int>>> Lit { get; }

    /// <summary>How many trays of a batch stand in a class.</summary>
    /// <param name="batch">The batch's number.</param>
    /// <param name="span">The span's number.</param>
    /// <param name="tierClass">The number of the class.</param>
    public int Trays(int batch, int span, int tierClass) => trays.GetValueOrDefault((batch, span, tierClass));

    /// <summary>Spreads the trays of a schedule.</summary>
    /// <param name="plan">The case.</param>
    /// <param name="schedule">Days for all of its batches.</param>
    public static ClassSpread Of(PlanningCase plan, Schedule schedule)
    {
        var model = new SpreadModel(plan, schedule);
        var solver = new Effort(Work).Solver("");
        var status = solver.Solve(model.Model);
        Invariant(status);
        return new ClassSpread(model.Trays(solver), model.Lit(solver));
    }

    private static void Invariant(CpSolverStatus status) => RackController.Model.Invariant.Holds(
        status is CpSolverStatus.Optimal or CpSolverStatus.Feasible, "a schedule that counts its tiers has places for its trays");
}
