using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Text;
using RackController.Model;

namespace RackController.Bench;

/// <summary>The outcome of a run as JSON, for programs. Times are ISO 8601 in UTC, lengths are seconds, units are in the
/// names. The same run gives the same bytes.</summary>
public static class JsonReport
{
    /// <summary>Writes the JSON.</summary>
    /// <param name="result">The run.</param>
    public static string Of(RunResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return JsonSerializer.Serialize(Document(result), JsonReportContext.Default.JsonDocumentOfRun) + "\n";
    }

    private static JsonDocumentOfRun Document(RunResult result)
    {
        var site = result.Scenario.Site;
        return new JsonDocumentOfRun(
            result.Scenario.Name, result.Scenario.About, site.Name, site.Zone.Id, Iso(result.Scenario.Start),
            result.Scenario.Length.TotalSeconds, result.Passed, result.Scans, LogText.Fingerprint(result),
            [.. result.Verdicts.Select(verdict => Expectation(site, verdict))],
            [.. result.Hazards.Select(hazard => Hazard(result, hazard))],
            [.. result.Floods.Select(flood => Flood(site, flood))],
            [.. result.Racks.Select(rack => Rack(site, rack))],
            [.. result.FloodAdvice.Select(JsonAdvice.Of)],
            [.. result.Loads.Select(load => new JsonLoad(
                site[load.Load].Name, load.Powered.TotalSeconds, load.SwitchedOn, Math.Round(load.EnergyKWh, 4)))],
            [
                .. result.Circuits.Select(circuit => new JsonCircuit(
                    site[circuit.Circuit].Name, Math.Round(circuit.EnergyKWh, 4))),
            ],
            [.. result.Trips.Select(tally => new JsonTally(tally.Subject, tally.Count))],
            [.. result.Alarms.Select(tally => new JsonTally(tally.Subject, tally.Count))]);
    }

    private static JsonExpectation Expectation(Site site, Verdict verdict) => new(
        verdict.Expectation.Name, verdict.Words, verdict.Expectation.Line, verdict.IsMet, verdict.Judged,
        verdict.Failure is { } failure
            ? new JsonFailure(Iso(failure.At), failure.Seen, [.. failure.Causes.Select(cause => LogText.Line(site, cause))])
            : null);

    private static JsonHazard Hazard(RunResult result, Hazard hazard) => new(
        HazardWords.Key(hazard.Kind), hazard.Where, Iso(hazard.At), hazard.Seen, result.Acceptance(hazard)?.Backstop);

    private static JsonFlood Flood(Site site, FloodRecord flood) => new(
        site[flood.Rack].Name, Iso(flood.At), flood.PumpRan.TotalSeconds,
        [
            .. flood.Trays.Select(tray => new JsonTray(
                tray.TierNumber, Math.Round(tray.PeakMm, 1), tray.Filled?.TotalSeconds, tray.Drained?.TotalSeconds)),
        ]);

    private static JsonRack Rack(Site site, RackTotals rack) => new(
        site[rack.Rack].Name, Math.Round(rack.WaterUsedL, 2), Math.Round(rack.SpilledL, 2), Math.Round(rack.DripTrayL, 2),
        rack.WiredFloatOpenedAfter?.TotalSeconds, rack.WiredTimeRelayOpenedAfter?.TotalSeconds, Math.Round(rack.Reservoir.LowestL, 1),
        Math.Round(rack.Reservoir.WarmestC, 1), Math.Round(rack.Reservoir.LowestOxygenMgPerL, 2),
        Math.Round(rack.Reservoir.ConductivityMsPerCm, 3),
        [
            .. rack.TierLights.Select(light => new JsonLight(
                light.TierNumber, Rounded(light.HoursPerDay), Rounded(light.DailyMolPerM2))),
        ]);

    private static double? Rounded(double? value) => value is { } number ? Math.Round(number, 3) : null;

    private static string Iso(Instant at) => InstantPattern.ExtendedIso.Format(at);
}

internal sealed record JsonDocumentOfRun(
    string Scenario, string About, string Site, string Zone, string Start, double LengthS, bool Passed, long Scans,
    string EventLog, ImmutableArray<JsonExpectation> Expectations, ImmutableArray<JsonHazard> Hazards,
    ImmutableArray<JsonFlood> Floods, ImmutableArray<JsonRack> Racks, ImmutableArray<JsonAdvice> FloodAdvice,
    ImmutableArray<JsonLoad> Loads, ImmutableArray<JsonCircuit> Circuits, ImmutableArray<JsonTally> InterlockTrips,
    ImmutableArray<JsonTally> AlarmsRaised);

internal sealed record JsonExpectation(string Name, string Expected, int Line, bool Met, int Judged, JsonFailure? Failure);

internal sealed record JsonFailure(string At, string Seen, ImmutableArray<string> Causes);

internal sealed record JsonHazard(string Kind, string Where, string At, string Seen, string? Backstop);

internal sealed record JsonFlood(string Rack, string At, double PumpRanS, ImmutableArray<JsonTray> Trays);

internal sealed record JsonTray(int Tier, double PeakMm, double? FilledAfterS, double? DrainedAfterS);

internal sealed record JsonRack(
    string Rack, double WaterUsedL, double SpilledL, double DripTrayL, double? WiredFloatOpenedAfterS,
    double? WiredTimeRelayOpenedAfterS, double ReservoirLowestL,
    double WaterWarmestC, double OxygenLowestMgPerL, double ConductivityAtEndMsPerCm, ImmutableArray<JsonLight> Tiers);

internal sealed record JsonLight(int Tier, double? LitHoursPerDay, double? DailyLightMolPerM2);

internal sealed record JsonLoad(string Load, double PoweredS, int SwitchedOn, double EnergyKWh);

internal sealed record JsonCircuit(string Circuit, double EnergyKWh);

internal sealed record JsonTally(string Subject, int Count);

[JsonSourceGenerationOptions(WriteIndented = true, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(JsonDocumentOfRun))]
internal sealed partial class JsonReportContext : JsonSerializerContext;
