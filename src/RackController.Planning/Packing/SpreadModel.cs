using System.Collections.Immutable;
using Google.OrTools.Sat;

namespace RackController.Planning;

/// <summary>The model of which class of tiers trays stand on, where their days are settled.</summary>
internal sealed class SpreadModel
{
    private readonly PlanningCase plan;
    private readonly Schedule schedule;
    private readonly Dictionary<(int Batch, int Span, Cell Cell), IntVar> shares = [];
    private readonly IntVar[][][] lit;

    /// <summary>Sets it up.</summary>
    /// <param name="plan">The case.</param>
    /// <param name="schedule">Days for all of its batches.</param>
    public SpreadModel(PlanningCase plan, Schedule schedule)
    {
        this.plan = plan;
        this.schedule = schedule;
        lit = [.. Enumerable.Range(0, plan.Spans.Length).Select(AddTiers)];
        var moves = LinearExpr.NewBuilder();
        for (var batch = 0; batch < schedule.Batches.Length; batch++)
        {
            AddBatch(batch, moves);
        }

        AddRoom();
        Model.Minimize(moves);
    }

    /// <summary>The model.</summary>
    public CpModel Model { get; } = new();

    /// <summary>How many trays of each batch stand in each class, where any do.</summary>
    /// <param name="solver">Who has solved the model.</param>
    public ImmutableDictionary<(int Batch, int Span, int Class), int> Trays(CpSolver solver) => shares
        .GroupBy(one => (one.Key.Batch, one.Key.Span, one.Key.Cell.Class))
        .ToImmutableDictionary(group => group.Key, group => (int)group.Sum(one => solver.Value(one.Value)));

    /// <summary>How many tiers are lit, by span, class and group.</summary>
    /// <param name="solver">Who has solved the model.</param>
    public ImmutableArray<ImmutableArray<ImmutableArray<int>>> Lit(CpSolver solver) =>
    [
        .. lit.Select(classes => classes.Select(groups => groups.Select(tiers => (int)solver.Value(tiers)).ToImmutableArray())
            .ToImmutableArray()),
    ];

    // As many tiers in all as the schedule lights in this span.
    private IntVar[][] AddTiers(int span)
    {
        var most = schedule.Lit[span].Sum(groups => groups.Sum());
        var tiers = plan.Classes
            .Select(one => one.Groups.Select((_, group) => Model.NewIntVar(0, Math.Min(most, one.Tiers.Length), $"tiers of {group}"))
                .ToArray())
            .ToArray();
        Model.Add(LinearExpr.Sum(tiers.SelectMany(groups => groups)) <= most);
        foreach (var (number, groups) in tiers.Index())
        {
            Model.Add(LinearExpr.Sum(groups) <= plan.Classes[number].Tiers.Length);
        }

        return tiers;
    }

    private void AddBatch(int batch, LinearExprBuilder moves)
    {
        var (one, timing) = schedule.Batches[batch];
        var stood = StandsAlready(one);
        for (var span = 0; span < plan.Spans.Length; span++)
        {
            if (timing.StageOn(plan.Spans[span].From) is not { } stage)
            {
                continue;
            }

            var cells = plan.Profiles[plan.ProfileOf(one.Stages[stage])];
            foreach (var cell in cells)
            {
                shares[(batch, span, cell)] = Model.NewIntVar(0, one.Batch.Trays, $"batch {batch} span {span} in {cell}");
            }

            Model.Add(LinearExpr.Sum(cells.Select(cell => shares[(batch, span, cell)])) == one.Batch.Trays);
            var standing = cells.GroupBy(cell => cell.Class)
                .ToDictionary(group => group.Key, group => LinearExpr.Sum(group.Select(cell => shares[(batch, span, cell)])));
            if (stood is not null)
            {
                foreach (var (number, here) in standing)
                {
                    var come = Model.NewIntVar(0, one.Batch.Trays, $"batch {batch} span {span} comes to {number}");
                    Model.Add(come >= here - (stood.TryGetValue(number, out var before) ? before : LinearExpr.Constant(0)));
                    moves.Add(come);
                }
            }

            stood = standing;
        }
    }

    private Dictionary<int, LinearExpr>? StandsAlready(BatchCase one)
    {
        var number = plan.Classes.Index()
            .Where(tiers => tiers.Item.Tiers.Any(tier => plan.Space.Tiers[tier].Name == one.Batch.UnderWay?.Tier))
            .Select(tiers => (int?)tiers.Index)
            .FirstOrDefault();
        return number is { } known ? new Dictionary<int, LinearExpr> { [known] = LinearExpr.Constant(one.Batch.Trays) } : null;
    }

    private void AddRoom()
    {
        foreach (var cell in shares.GroupBy(one => (one.Key.Span, one.Key.Cell)))
        {
            Model.Add(LinearExpr.Sum(cell.Select(one => one.Value))
                <= plan.Classes[cell.Key.Cell.Class].Places * lit[cell.Key.Span][cell.Key.Cell.Class][cell.Key.Cell.Group]);
        }
    }
}
