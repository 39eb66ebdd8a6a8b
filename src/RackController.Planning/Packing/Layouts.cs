using System.Collections.Immutable;
using RackController.Growing;

namespace RackController.Planning;

/// <summary>Says on which tier the trays of every batch stand, and how long each lamp is on.</summary>
internal static class Layouts
{
    // People set a timer to a quarter of an hour.
    private const double StepH = 0.25;

    /// <summary>Lays a schedule out.</summary>
    /// <param name="plan">The case.</param>
    /// <param name="schedule">Days for all of its batches.</param>
    /// <returns>Where each batch stands, in the order of the case, and how long the lamps are on.</returns>
    public static (ImmutableArray<ImmutableArray<Stay>> Stays, ImmutableArray<LampSetting> Lamps) Of(
        PlanningCase plan, Schedule schedule)
    {
        var spread = ClassSpread.Of(plan, schedule);
        var layouts = plan.Classes.Select(one => new Layout(one)).ToList();
        var shelves = layouts.SelectMany(layout => layout.Shelves).OrderBy(shelf => shelf.Tier).ToList();
        PutWhatStandsAlready(plan, schedule, shelves);
        var standing = new List<Standing>();
        var lamps = new List<LampSetting>();
        var isLitForH = shelves.ToDictionary(shelf => shelf.Tier, _ => double.NaN);
        for (var span = 0; span < plan.Spans.Length; span++)
        {
            foreach (var (number, layout) in layouts.Index())
            {
                layout.Next(GuestsOf(plan, schedule, spread, span, number), spread.Lit[span][number]);
            }

            foreach (var shelf in shelves)
            {
                standing.AddRange(shelf.Guests.Select(one => new Standing(one.Guest.Batch, shelf.Tier, span, one.Trays)));
                var hours = shelf.IsEmpty ? 0 : Hours(shelf.Hours, isLitForH[shelf.Tier], plan.Space.Tiers[shelf.Tier].ScheduledH);
                if (hours != isLitForH[shelf.Tier])
                {
                    isLitForH[shelf.Tier] = hours;
                    lamps.Add(new LampSetting(shelf.Tier, plan.Spans[span].From, default, hours));
                }
            }
        }

        return (StaysOf(plan, standing), WithEnds(plan, lamps));
    }

    private static void PutWhatStandsAlready(PlanningCase plan, Schedule schedule, List<Shelf> shelves)
    {
        foreach (var (index, batch) in schedule.Batches.Index())
        {
            var shelf = shelves.Find(one => plan.Space.Tiers[one.Tier].Name == batch.Case.Batch.UnderWay?.Tier);
            if (shelf is { Free: > 0 })
            {
                shelf.Put(new Guest(index, null, 0), Math.Min(batch.Case.Batch.Trays, shelf.Free));
            }
        }
    }

    private static List<(Guest Guest, int Trays)> GuestsOf(PlanningCase plan, Schedule schedule, ClassSpread spread, int span, int number)
    {
        var guests = new List<(Guest Guest, int Trays)>();
        foreach (var (index, batch) in schedule.Batches.Index())
        {
            if (spread.Trays(index, span, number) is > 0 and var trays)
            {
                var stage = batch.Timing.StageOn(plan.Spans[span].From)!.Value;
                var leaves = plan.Spans.Count(one => one.From < batch.Timing.EndOf(stage));
                guests.Add((new Guest(index, batch.Case.Stages[stage], leaves), trays));
            }
        }

        return guests;
    }

    // What it was, where that suits; else a quarter of an hour near what the rack file says; else whatever suits.
    private static double Hours(Bounds bounds, double wasH, double scheduledH)
    {
        if (wasH > 0 && bounds.Holds(wasH))
        {
            return wasH;
        }

        var near = bounds.Nearest(scheduledH);
        var rounded = new[] { Math.Round(near / StepH), Math.Floor(near / StepH), Math.Ceiling(near / StepH) }
            .Select(steps => steps * StepH).Where(bounds.Holds).ToList();
        return rounded.Count > 0 ? rounded[0] : near;
    }

    private static ImmutableArray<LampSetting> WithEnds(PlanningCase plan, List<LampSetting> lamps)
    {
        var end = plan.Spans.IsEmpty ? default : plan.Spans[^1].From.PlusDays(plan.Spans[^1].Days);
        return
        [
            .. lamps.Select((lamp, index) => lamp with
            {
                Until = lamps.Skip(index + 1).FirstOrDefault(later => later.Tier == lamp.Tier)?.From ?? end,
            }),
        ];
    }

    private static ImmutableArray<ImmutableArray<Stay>> StaysOf(PlanningCase plan, List<Standing> standing)
    {
        var byBatch = standing.ToLookup(one => one.Batch);
        return [.. plan.Batches.Select((_, batch) => Merged(plan, byBatch[batch]).ToImmutableArray())];
    }

    // The same trays on the same tier, span after span, are one stay.
    private static IEnumerable<Stay> Merged(PlanningCase plan, IEnumerable<Standing> standing)
    {
        foreach (var onTier in standing.GroupBy(one => one.Tier).OrderBy(group => group.Key))
        {
            var spans = onTier.OrderBy(one => one.Span).ToList();
            for (var first = 0; first < spans.Count;)
            {
                var last = first;
                while (last + 1 < spans.Count && spans[last + 1].Span == spans[last].Span + 1
                    && spans[last + 1].Trays == spans[first].Trays)
                {
                    last++;
                }

                var end = plan.Spans[spans[last].Span];
                yield return new Stay(onTier.Key, spans[first].Trays, plan.Spans[spans[first].Span].From, end.From.PlusDays(end.Days));
                first = last + 1;
            }
        }
    }

    private readonly record struct Standing(int Batch, int Tier, int Span, int Trays);
}
