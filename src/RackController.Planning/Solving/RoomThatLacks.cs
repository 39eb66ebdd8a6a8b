using System.Collections.Immutable;
using Google.OrTools.Sat;
using NodaTime;
using RackController.Growing;

namespace RackController.Planning;

/// <summary>The least room that would have to be added so that everything of a case can be met.</summary>
internal static class RoomThatLacks
{
    // A tier has a lamp and a place on a rack; a place in the dark is a shelf. A place on a tier counts twice one in the dark.
    private const int CostOfATierPlace = 2;

    // Nobody puts a tier up for two days, takes it down and puts it up again: to begin costs as much as to keep it for a week.
    private const int DaysToBegin = 7;

    /// <summary>Finds it.</summary>
    /// <param name="plan">A case.</param>
    /// <param name="effort">How hard to try.</param>
    /// <returns>What to add and when, by day; empty where nothing lacks; null where nothing was found.</returns>
    public static ImmutableArray<ExtraRoom>? Of(PlanningCase plan, Effort effort)
    {
        var model = new CpModel();
        var use = new RoomUse(model, plan, canShrink: false);
        var cost = LinearExpr.NewBuilder();
        var most = plan.Batches.Sum(one => one.Batch.Trays);
        var tiers = new IntVar[plan.Classes.Length][];
        for (var number = 0; number < plan.Classes.Length; number++)
        {
            tiers[number] = [.. plan.Spans.Select((_, span) => model.NewIntVar(0, most, $"more tiers of {number} in {span}"))];
            for (var span = 0; span < plan.Spans.Length; span++)
            {
                model.Add(use.LitOf(span, number) <= plan.Classes[number].Tiers.Length + tiers[number][span]);
                cost.AddTerm(tiers[number][span], plan.Spans[span].Days * plan.Classes[number].Places * CostOfATierPlace);
            }

            AddBeginnings(model, cost, tiers[number], most, DaysToBegin * plan.Classes[number].Places * CostOfATierPlace);
        }

        var dark = plan.Spans.Select((_, span) => model.NewIntVar(0, most, $"more dark in {span}")).ToArray();
        for (var span = 0; span < plan.Spans.Length; span++)
        {
            cost.AddTerm(dark[span], plan.Spans[span].Days);
            if (use.Dark(span) is { } trays)
            {
                model.Add(trays <= plan.Space.DarkTrays + dark[span]);
            }
        }

        AddBeginnings(model, cost, dark, most, DaysToBegin);
        model.Minimize(cost);
        var solver = effort.Solver("");
        return solver.Solve(model) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)
            ? null
            :
            [
                .. tiers.SelectMany((counts, number) => Stretches(plan, [.. counts.Select(one => (int)solver.Value(one))])
                    .Select(one => new ExtraRoom(false, one.Count, one.From, one.Last,
                        plan.Space.Tiers[plan.Classes[number].Tiers[0]].Name))),
                .. Stretches(plan, [.. dark.Select(one => (int)solver.Value(one))])
                    .Select(one => new ExtraRoom(true, one.Count, one.From, one.Last, "")),
            ];
    }

    private static void AddBeginnings(CpModel model, LinearExprBuilder cost, IntVar[] more, int most, int costOfOne)
    {
        for (var span = 0; span < more.Length; span++)
        {
            var begun = model.NewIntVar(0, most, $"begun in {span}");
            model.Add(begun >= more[span] - (span > 0 ? more[span - 1] : LinearExpr.Constant(0)));
            cost.AddTerm(begun, costOfOne);
        }
    }

    // Layer by layer, so that one for a fortnight and a second for three days of it are told apart.
    private static IEnumerable<(int Count, LocalDate From, LocalDate Last)> Stretches(PlanningCase plan, ImmutableArray<int> counts) =>
        Enumerable.Range(1, counts.DefaultIfEmpty().Max())
            .SelectMany(layer => Stretches(plan, counts, layer))
            .GroupBy(one => one)
            .OrderBy(same => same.Key.From).ThenBy(same => same.Key.Last)
            .Select(same => (same.Count(), same.Key.From, same.Key.Last));

    private static IEnumerable<(LocalDate From, LocalDate Last)> Stretches(PlanningCase plan, ImmutableArray<int> counts, int layer)
    {
        for (var span = 0; span < counts.Length; span++)
        {
            if (counts[span] < layer)
            {
                continue;
            }

            var from = plan.Spans[span].From;
            while (span + 1 < counts.Length && counts[span + 1] >= layer)
            {
                span++;
            }

            yield return (from, plan.Spans[span].From.PlusDays(plan.Spans[span].Days - 1));
        }
    }
}
