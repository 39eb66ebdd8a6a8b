using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>What is wrong with a flood, in sentences with their numbers.</summary>
public static class FloodProblemWords
{
    // Less than this prints as nothing, and is.
    private const double NothingBelowLpm = 0.05;

    /// <summary>The sentences, none when nothing is wrong. They begin small and end without a full stop.</summary>
    /// <param name="survey">The survey.</param>
    public static IEnumerable<string> Of(FloodSurvey survey)
    {
        ArgumentNullException.ThrowIfNull(survey);
        return survey.Findings.GroupBy(finding => finding.Problem).SelectMany(group => group.Key switch
        {
            FloodProblem.TierStarved => Starved(survey, Tiers(survey, group)),
            FloodProblem.TrayOverwhelmed => Tiers(survey, group).Select(Overwhelmed),
            FloodProblem.ReservoirTooLow => [TooLow(survey)],
            FloodProblem.FilledTooLate => [FilledLate(survey, Tiers(survey, group))],
            FloodProblem.DrainedTooLate => DrainedLate(survey, Tiers(survey, group)),
            _ => throw new InvariantBrokenException("every problem of a flood has its words"),
        });
    }

    private static List<TierSurvey> Tiers(FloodSurvey survey, IEnumerable<FloodFinding> findings) =>
        [.. findings.Select(finding => survey.Tiers[finding.TierNumber!.Value - 1])];

    private static IEnumerable<string> Starved(FloodSurvey survey, List<TierSurvey> tiers)
    {
        var dry = tiers.Where(tier => tier.FlowLpm < NothingBelowLpm).ToList();
        if (dry.Count > 0)
        {
            yield return $"the pump cannot feed {Names(dry)}: no water gets there";
        }

        foreach (var tier in tiers.Except(dry))
        {
            yield return tier.SettledMm < tier.Tier.Tray.FilledMm
                ? $"tier {tier.Tier.Number} gets {tier.FlowLpm:0.0} L/min, too little to fill it against its weep: it stands at "
                    + $"{tier.SettledMm:0} mm, and {tier.Tier.Tray.FilledMm:0} mm is full"
                : $"tier {tier.Tier.Number} gets {tier.FlowAtLowestLpm:0.0} L/min once the reservoir is down to "
                    + $"{survey.LowestWorkingMm:0} mm, and its weep takes {tier.HoldsFullLpm:0.0} L/min when it is full";
        }
    }

    private static string Overwhelmed(TierSurvey tier)
    {
        var rimMm = tier.Tier.Tray.RimDepthMm;
        var stack = tier.StackHoldsBack ? "into what the drain stack has left" : "away";
        var end = tier.SettledMm >= rimMm
            ? $"over its rim ({rimMm:0.#} mm) onto the floor"
            : $"where its high float ({tier.HighFloatMm:0.#} mm) stops the pump";
        return $"tier {tier.Tier.Number} gets {tier.FlowLpm:0.0} L/min, and weep and standpipe carry {tier.CarriedLpm:0.0} L/min "
            + $"{stack}: the water rises to {tier.SettledMm:0} mm, {end}";
    }

    private static string TooLow(FloodSurvey survey)
    {
        var end = survey.LowestWorkingMm > survey.Rack.Reservoir.PumpIntakeMm ? "its low float stops the pump" : "the pump draws air";
        return $"a flood takes the reservoir down to {survey.LowestWorkingMm:0} mm after {FloodWording.Minutes(survey.RunsLow)}, "
            + $"where {end}";
    }

    private static string FilledLate(FloodSurvey survey, List<TierSurvey> tiers) =>
        $"{Names(tiers)} {Are(tiers)} full only after {FloodWording.Minutes(tiers.Max(tier => tier.Filled))}, and the fill ends after "
        + Spans.Words(survey.FillEnds);

    private static IEnumerable<string> DrainedLate(FloodSurvey survey, List<TierSurvey> tiers)
    {
        var never = tiers.Where(tier => tier.Drained is null).ToList();
        if (never.Count > 0)
        {
            yield return $"{Names(never)} never {(never.Count == 1 ? "empties" : "empty")}";
        }

        var late = tiers.Except(never).ToList();
        if (late.Count > 0)
        {
            var drained = late.Max(tier => tier.Drained);
            var left = survey.Rack.Schedule.LeastSpacing() - survey.PumpRun;
            yield return $"{Names(late)} {Are(late)} empty only {FloodWording.Minutes(drained)} after the pump stops, and `drain` is "
                + Spans.Words(survey.Rack.Schedule.Floods.Drain)
                + (drained > left ? $"; the next flood begins after {Spans.Words(left.Value)}" : "");
        }
    }

    private static string Names(List<TierSurvey> tiers) => TierWords.List([.. tiers.Select(tier => tier.Tier.Number)]);

    private static string Are(List<TierSurvey> tiers) => tiers.Count == 1 ? "is" : "are";
}
