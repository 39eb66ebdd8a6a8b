using System.Text.Json.Nodes;
using NodaTime;

namespace RackController.Bench;

/// <summary>What a campaign found as JSON, for programs. Lengths are seconds, units are in the names.</summary>
public static class CampaignJson
{
    /// <summary>Writes the JSON.</summary>
    /// <param name="findings">The findings.</param>
    public static string Of(CampaignFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var options = findings.Plan.Options;
        return IndentedJson.Of(new JsonObject
        {
            ["site"] = findings.Plan.Site.Name,
            ["rackFile"] = findings.RackFile,
            ["command"] = findings.Command,
            ["seed"] = options.Seed,
            ["shard"] = $"{options.Shard.Number}/{options.Shard.Of}",
            ["passed"] = findings.Passed,
            ["cases"] = findings.Outcomes.Length,
            ["rackDays"] = Math.Round(findings.RackDays, 2),
            ["casesTookS"] = Math.Round(findings.CasesTookS, 2),
            ["rackDaysPerSecond"] = Math.Round(findings.RackDaysPerSecond, 1),
            ["failures"] = new JsonArray([.. findings.Failures.Select(Failure)]),
            ["hazardsByMode"] = new JsonArray([.. findings.HazardsByMode.Select(Hazards)]),
            ["tripTimes"] = new JsonArray([.. findings.TripTimes.Select(Times)]),
            ["wiredBackstops"] = new JsonArray([.. findings.Backstops.Select(Backstop)]),
            ["quiet"] = Quiet(findings.Quiet),
            ["modes"] = new JsonArray([.. findings.Plan.Modes.Select(mode => Mode(mode.Mode, mode.Places))]),
        });
    }

    private static JsonObject Failure(FailureGroup group, int index) => new()
    {
        ["number"] = index + 1,
        ["class"] = group.Smallest.Class.ToString().ToLowerInvariant(),
        ["what"] = group.Words,
        ["cases"] = group.Count,
        ["smallest"] = group.Smallest.Case.Name,
        ["seen"] = group.Smallest.Seen,
    };

    private static JsonObject Hazards(ModeHazards row) => new()
    {
        ["mode"] = row.Mode.Id,
        ["cases"] = row.Cases,
        ["hazards"] = new JsonArray(
            [.. row.Counts.Select((count, kind) => JsonReport.Of(new Tally(HazardWords.Key((HazardKind)kind), count)))]),
    };

    private static JsonObject Times(TripTimes times) => new()
    {
        ["mode"] = times.Mode.Id,
        ["cases"] = times.Cases,
        ["tripped"] = times.Tripped,
        ["medianTripS"] = Seconds(times.MedianTrip),
        ["worstTripS"] = Seconds(times.WorstTrip),
        ["alarmed"] = times.Alarmed,
        ["medianAlarmS"] = Seconds(times.MedianAlarm),
        ["worstAlarmS"] = Seconds(times.WorstAlarm),
    };

    private static JsonObject Backstop(BackstopUse use) => new()
    {
        ["backstop"] = use.Backstop.Words(),
        ["modes"] = use.Modes,
        ["cases"] = use.Count,
        ["onlyThis"] = use.Prevented,
        ["otherwise"] = use.Otherwise,
    };

    private static JsonObject Quiet(QuietYears quiet) => new()
    {
        ["rackYears"] = Math.Round(quiet.RackYears, 2),
        ["falseTripsPerRackYear"] = Math.Round(quiet.TripsPerRackYear, 3),
        ["trips"] = new JsonArray([.. quiet.Trips.Select(JsonReport.Of)]),
        ["alarms"] = new JsonArray([.. quiet.Alarms.Select(JsonReport.Of)]),
    };

    private static JsonObject Mode(FaultMode mode, int places) => new()
    {
        ["id"] = mode.Id,
        ["words"] = mode.Words,
        ["places"] = places,
        ["source"] = mode.Source,
    };

    private static double? Seconds(Duration? time) => time is { } known ? Math.Round(known.TotalSeconds, 3) : null;
}
