using System.Collections.Immutable;
using Google.OrTools.Sat;

namespace RackController.Planning;

/// <summary>
/// The model of who is where when: for each batch one of its ways, and for each span how many tiers of a class are lit for a group.
/// Trays that agree share tiers as tightly as they go, so a group needs as many tiers as its trays fill, rounded up. Trays of one stage
/// are all alike; each is counted where it suits, and which of them stands on which tier is a later question.
/// </summary>
internal sealed class RoomUse
{
    private readonly PlanningCase plan;
    private readonly Dictionary<(int Span, int Profile), LinearExprBuilder> lit = [];
    private readonly Dictionary<int, LinearExprBuilder> dark = [];

    /// <summary>Puts the batches into a model.</summary>
    /// <param name="model">The model.</param>
    /// <param name="plan">The case.</param>
    /// <param name="canShrink">Whether a batch may have fewer trays than are asked for, or none.</param>
    public RoomUse(CpModel model, PlanningCase plan, bool canShrink)
    {
        this.plan = plan;
        Model = model;
        Ways = new BoolVar[plan.Batches.Length][];
        Trays = new IntVar[plan.Batches.Length][];
        for (var batch = 0; batch < plan.Batches.Length; batch++)
        {
            AddBatch(batch, canShrink);
        }

        Lit = [.. Enumerable.Range(0, plan.Spans.Length).Select(AddTiers)];
    }

    /// <summary>The model.</summary>
    public CpModel Model { get; }

    /// <summary>Whether a batch goes a way, by batch and way.</summary>
    public BoolVar[][] Ways { get; }

    /// <summary>How many trays go each way, by batch and way; null for a batch that has all of its trays wherever it goes.</summary>
    public IntVar[]?[] Trays { get; }

    /// <summary>How many tiers are lit, by span, class and group.</summary>
    public ImmutableArray<IntVar[][]> Lit { get; }

    /// <summary>Trays in the dark in a span; null where none can be.</summary>
    /// <param name="span">Its number.</param>
    public LinearExprBuilder? Dark(int span) => dark.GetValueOrDefault(span);

    /// <summary>Tiers of a class that are lit in a span.</summary>
    /// <param name="span">Its number.</param>
    /// <param name="tierClass">The number of the class.</param>
    public LinearExpr LitOf(int span, int tierClass) => LinearExpr.Sum(Lit[span][tierClass]);

    /// <summary>All days on which a tier is lit.</summary>
    public LinearExpr LitTierDays()
    {
        var sum = LinearExpr.NewBuilder();
        for (var span = 0; span < plan.Spans.Length; span++)
        {
            foreach (var tiers in Lit[span].SelectMany(groups => groups))
            {
                sum.AddTerm(tiers, plan.Spans[span].Days);
            }
        }

        return sum;
    }

    private void AddBatch(int index, bool canShrink)
    {
        var one = plan.Batches[index];
        var mayBeLeftOut = canShrink && one.Batch.UnderWay is null;
        Ways[index] = [.. one.Timings.Select((_, way) => Model.NewBoolVar($"batch {index} way {way}"))];
        if (mayBeLeftOut)
        {
            Model.AddAtMostOne(Ways[index]);
        }
        else
        {
            Model.AddExactlyOne(Ways[index]);
        }

        // What is for one order only is grown whole or not at all.
        if (mayBeLeftOut && one.Batch.Orders.Length > 1)
        {
            Trays[index] = [.. one.Timings.Select((_, way) => Model.NewIntVar(0, one.Batch.Trays, $"batch {index} trays {way}"))];
        }

        for (var way = 0; way < one.Timings.Length; way++)
        {
            if (Trays[index] is { } trays)
            {
                Model.Add(trays[way] <= one.Batch.Trays * Ways[index][way]);
            }

            foreach (var span in plan.SpansWithin(one.Timings[way].Sow, one.Timings[way].Lit))
            {
                Count(dark, span, index, way);
            }

            for (var stage = 0; stage < one.Stages.Length; stage++)
            {
                foreach (var span in plan.SpansWithin(one.Timings[way].StageStarts[stage], one.Timings[way].EndOf(stage)))
                {
                    Count(lit, (span, plan.ProfileOf(one.Stages[stage])), index, way);
                }
            }
        }
    }

    private void Count<TKey>(Dictionary<TKey, LinearExprBuilder> counts, TKey key, int batch, int way)
        where TKey : notnull
    {
        if (!counts.TryGetValue(key, out var sum))
        {
            counts.Add(key, sum = LinearExpr.NewBuilder());
        }

        if (Trays[batch] is { } trays)
        {
            sum.Add(trays[way]);
        }
        else
        {
            sum.AddTerm(Ways[batch][way], plan.Batches[batch].Batch.Trays);
        }
    }

    // Every tray is counted with one group that it agrees with, and a group has the places of its lit tiers.
    private IntVar[][] AddTiers(int span)
    {
        var most = plan.Batches.Sum(one => one.Batch.Trays);
        var counted = plan.Classes.Select(tiers => tiers.Groups.Select(_ => LinearExpr.NewBuilder()).ToArray()).ToArray();
        for (var profile = 0; profile < plan.Profiles.Length; profile++)
        {
            if (!lit.TryGetValue((span, profile), out var trays))
            {
                continue;
            }

            var cells = plan.Profiles[profile];
            if (cells.Length == 1)
            {
                counted[cells[0].Class][cells[0].Group].Add(trays);
                continue;
            }

            var shares = cells.Select(cell => Model.NewIntVar(0, most, $"span {span} profile {profile} in {cell}")).ToArray();
            Model.Add(LinearExpr.Sum(shares) == trays);
            foreach (var (cell, share) in cells.Zip(shares))
            {
                counted[cell.Class][cell.Group].Add(share);
            }
        }

        return
        [
            .. counted.Select((groups, number) => groups.Select((trays, group) =>
            {
                var tiers = Model.NewIntVar(0, most, $"span {span} class {number} tiers of {group}");
                Model.Add(plan.Classes[number].Places * tiers >= trays);
                return tiers;
            }).ToArray()),
        ];
    }
}
