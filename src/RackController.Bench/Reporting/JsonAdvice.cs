using System.Collections.Immutable;
using RackController.Plant;

namespace RackController.Bench;

internal sealed record JsonAdvice(
    string Rack, ImmutableArray<JsonTierSurvey> Tiers, ImmutableArray<string> Wrong, ImmutableArray<JsonCure> Ways)
{
    public static JsonAdvice Of(FloodAdvice advice) => new(
        advice.Survey.Rack.Name, TiersOf(advice.Survey), [.. FloodProblemWords.Of(advice.Survey)],
        [
            .. advice.Ways.Select(way =>
                new JsonCure(way.Changes, TiersOf(way.After), [.. FloodProblemWords.Of(way.After)])),
        ]);

    private static ImmutableArray<JsonTierSurvey> TiersOf(FloodSurvey survey) =>
    [
        .. survey.Tiers.Select(tier => new JsonTierSurvey(
            tier.Tier.Number, tier.TakesPart, Math.Round(tier.FlowLpm, 2), Math.Round(tier.FlowAtLowestLpm, 2),
            Rounded(tier.Filled?.TotalSeconds), Math.Round(tier.SettledMm, 1), Rounded(tier.Drained?.TotalSeconds))),
    ];

    private static double? Rounded(double? seconds) => seconds is { } known ? Math.Round(known, 1) : null;
}

internal sealed record JsonTierSurvey(
    int Tier, bool TakesPart, double FlowLpm, double FlowAtLowestLpm, double? FilledAfterS, double SettledMm, double? DrainedAfterS);

internal sealed record JsonCure(ImmutableArray<string> Changes, ImmutableArray<JsonTierSurvey> Tiers, ImmutableArray<string> LeftWrong);
