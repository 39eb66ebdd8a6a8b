using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
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
        return JsonSerializer.Serialize(
            new JsonCampaign(
                findings.Plan.Site.Name, findings.RackFile, findings.Command, options.Seed, $"{options.Shard.Number}/{options.Shard.Of}",
                findings.Passed, findings.Outcomes.Length, Math.Round(findings.RackDays, 2), Math.Round(findings.CasesTookS, 2),
                Math.Round(findings.RackDaysPerSecond, 1),
                [.. findings.Failures.Select((group, index) => new JsonFailureGroup(
                    index + 1, group.Smallest.Class.ToString().ToLowerInvariant(), group.Words, group.Count, group.Smallest.Case.Name,
                    group.Smallest.Seen))],
                [.. findings.HazardsByMode.Select(row => new JsonHazardRow(
                    row.Mode.Id, row.Cases,
                    [.. row.Counts.Select((count, kind) => new JsonTally(HazardWords.Key((HazardKind)kind), count))]))],
                [.. findings.TripTimes.Select(times => new JsonTripTimes(
                    times.Mode.Id, times.Cases, times.Tripped, Seconds(times.MedianTrip), Seconds(times.WorstTrip), times.Alarmed,
                    Seconds(times.MedianAlarm), Seconds(times.WorstAlarm)))],
                [.. findings.Backstops.Select(use => new JsonBackstop(
                    use.Backstop.Words(), use.Modes, use.Count, use.Prevented, use.Otherwise))],
                new JsonQuiet(
                    Math.Round(findings.Quiet.RackYears, 2), Math.Round(findings.Quiet.TripsPerRackYear, 3),
                    [.. findings.Quiet.Trips.Select(Of)], [.. findings.Quiet.Alarms.Select(Of)]),
                [.. findings.Plan.Modes.Select(mode => new JsonMode(mode.Mode.Id, mode.Mode.Words, mode.Places, mode.Mode.Source))]),
            CampaignJsonContext.Default.JsonCampaign) + "\n";
    }

    private static double? Seconds(Duration? time) => time is { } known ? Math.Round(known.TotalSeconds, 3) : null;

    private static JsonTally Of(Tally tally) => new(tally.Subject, tally.Count);
}

internal sealed record JsonCampaign(
    string Site, string RackFile, string Command, ulong Seed, string Shard, bool Passed, int Cases, double RackDays, double CasesTookS,
    double RackDaysPerSecond, ImmutableArray<JsonFailureGroup> Failures, ImmutableArray<JsonHazardRow> HazardsByMode,
    ImmutableArray<JsonTripTimes> TripTimes, ImmutableArray<JsonBackstop> WiredBackstops, JsonQuiet Quiet, ImmutableArray<JsonMode> Modes);

internal sealed record JsonFailureGroup(int Number, string Class, string What, int Cases, string Smallest, string Seen);

internal sealed record JsonHazardRow(string Mode, int Cases, ImmutableArray<JsonTally> Hazards);

internal sealed record JsonTripTimes(
    string Mode, int Cases, int Tripped, double? MedianTripS, double? WorstTripS, int Alarmed, double? MedianAlarmS, double? WorstAlarmS);

internal sealed record JsonBackstop(string Backstop, string Modes, int Cases, int? OnlyThis, string Otherwise);

internal sealed record JsonQuiet(
    double RackYears, double FalseTripsPerRackYear, ImmutableArray<JsonTally> Trips, ImmutableArray<JsonTally> Alarms);

internal sealed record JsonMode(string Id, string Words, int Places, string Source);

[JsonSourceGenerationOptions(WriteIndented = true, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(JsonCampaign))]
internal sealed partial class CampaignJsonContext : JsonSerializerContext;
