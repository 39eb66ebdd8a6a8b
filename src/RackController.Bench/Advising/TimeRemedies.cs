using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>More time to fill or drain, as far as the next flood and the pump's limits leave it.</summary>
internal static class TimeRemedies
{
    public static IEnumerable<FloodChange> LongerFill(FloodSurvey survey)
    {
        var floods = survey.Rack.Schedule.Floods;
        var (limit, soak) = (floods.Fill.Limit, floods.Soak);
        var filled = survey.Tiers.Max(tier => tier.Filled) ?? Duration.Zero;
        var fill = RoundedUp(filled, Duration.FromSeconds(30));
        var words = $"let the fill take {Spans.Words(fill)} instead of {Spans.Words(limit)}";
        List<FloodChange> changes =
            [new(FloodEffort.Setting, words, With(survey.Rack, floods with { Fill = floods.Fill with { Limit = fill } }))];
        if (soak - (fill - limit) is var shorter && shorter < soak && shorter >= soak / 2)
        {
            changes.Add(new(
                FloodEffort.Setting,
                $"{words}, and the soak {Spans.Words(shorter)} instead of {Spans.Words(soak)}",
                With(survey.Rack, floods with { Fill = floods.Fill with { Limit = fill }, Soak = shorter })));
        }

        // A fill that ends when some trays read full leaves the others to the soak.
        var longer = RoundedUp(filled - survey.FillEnds, Duration.FromSeconds(30));
        changes.Add(new(
            FloodEffort.Setting,
            $"let the soak take {Spans.Words(longer)} instead of {Spans.Words(soak)}", With(survey.Rack, floods with { Soak = longer })));
        return changes.Where(change => IsAllowed(change.Rack));
    }

    public static IEnumerable<FloodChange> LongerDrain(FloodSurvey survey)
    {
        if (survey.Tiers.Any(tier => tier.TakesPart && tier.Drained is null))
        {
            yield break;
        }

        var floods = survey.Rack.Schedule.Floods;
        var drain = RoundedUp(survey.Tiers.Max(tier => tier.Drained) ?? Duration.Zero, Duration.FromMinutes(1));
        var changed = With(survey.Rack, floods with { Drain = drain });
        if (IsAllowed(changed))
        {
            yield return new FloodChange(
                FloodEffort.Setting,
                $"give the trays {Spans.Words(drain)} to drain instead of {Spans.Words(floods.Drain)}", changed);
        }
    }

    // What the reader of rack files asks of a schedule.
    private static bool IsAllowed(Rack rack)
    {
        var floods = rack.Schedule.Floods;
        var run = floods.Fill.Limit + floods.Soak;
        return run < rack.Limits.PumpMaximumRun
            && run * rack.Schedule.Starts().Length <= rack.Limits.PumpDailyBudget
            && !(run + Duration.Max(floods.Drain, rack.Limits.PumpRest) > rack.Schedule.LeastSpacing());
    }

    private static Rack With(Rack rack, FloodPlan floods) => rack with { Schedule = rack.Schedule with { Floods = floods } };

    private static Duration RoundedUp(Duration length, Duration unit) => unit * Math.Ceiling(length / unit);
}
