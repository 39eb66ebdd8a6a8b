using System.Text.Json.Nodes;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>What could be better about a rack's floods, as a part of the JSON of a run.</summary>
internal static class JsonAdvice
{
    /// <summary>Makes it.</summary>
    public static JsonObject Of(FloodAdvice advice) => new()
    {
        ["rack"] = advice.Survey.Rack.Name,
        ["tiers"] = TiersOf(advice.Survey),
        ["wrong"] = new JsonArray([.. FloodProblemWords.Of(advice.Survey)]),
        ["ways"] = new JsonArray(
        [
            .. advice.Ways.Select(way => new JsonObject
            {
                ["changes"] = new JsonArray([.. way.Changes]),
                ["tiers"] = TiersOf(way.After),
                ["leftWrong"] = new JsonArray([.. FloodProblemWords.Of(way.After)]),
            }),
        ]),
    };

    private static JsonArray TiersOf(FloodSurvey survey) => new(
    [
        .. survey.Tiers.Select(tier => new JsonObject
        {
            ["tier"] = tier.Tier.Number,
            ["takesPart"] = tier.TakesPart,
            ["flowLpm"] = Math.Round(tier.FlowLpm, 2),
            ["flowAtLowestLpm"] = Math.Round(tier.FlowAtLowestLpm, 2),
            ["filledAfterS"] = Rounded(tier.Filled?.TotalSeconds),
            ["settledMm"] = Math.Round(tier.SettledMm, 1),
            ["drainedAfterS"] = Rounded(tier.Drained?.TotalSeconds),
        }),
    ]);

    private static double? Rounded(double? seconds) => seconds is { } known ? Math.Round(known, 1) : null;
}
