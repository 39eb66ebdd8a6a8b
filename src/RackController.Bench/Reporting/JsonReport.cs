using System.Text.Json.Nodes;
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
        return IndentedJson.Of(Document(result));
    }

    private static JsonObject Document(RunResult result)
    {
        var site = result.Scenario.Site;
        return new JsonObject
        {
            ["scenario"] = result.Scenario.Name,
            ["about"] = result.Scenario.About,
            ["site"] = site.Name,
            ["zone"] = site.Zone.Id,
            ["start"] = Iso(result.Scenario.Start),
            ["lengthS"] = result.Scenario.Length.TotalSeconds,
            ["passed"] = result.Passed,
            ["scans"] = result.Scans,
            ["eventLog"] = LogText.Fingerprint(result),
            ["expectations"] = new JsonArray([.. result.Verdicts.Select(verdict => Expectation(site, verdict))]),
            ["hazards"] = new JsonArray([.. result.Hazards.Select(hazard => Hazard(result, hazard))]),
            ["floods"] = new JsonArray([.. result.Floods.Select(flood => Flood(site, flood))]),
            ["racks"] = new JsonArray([.. result.Racks.Select(rack => Rack(site, rack))]),
            ["floodAdvice"] = new JsonArray([.. result.FloodAdvice.Select(JsonAdvice.Of)]),
            ["loads"] = new JsonArray([.. result.Loads.Select(load => Load(site, load))]),
            ["circuits"] = new JsonArray([.. result.Circuits.Select(circuit => Circuit(site, circuit))]),
            ["interlockTrips"] = new JsonArray([.. result.Trips.Select(Of)]),
            ["alarmsRaised"] = new JsonArray([.. result.Alarms.Select(Of)]),
        };
    }

    /// <summary>How often something came, as a part of the JSON of a run.</summary>
    internal static JsonObject Of(Tally tally) => new() { ["subject"] = tally.Subject, ["count"] = tally.Count };

    private static JsonObject Expectation(Site site, Verdict verdict) => new()
    {
        ["name"] = verdict.Expectation.Name,
        ["expected"] = verdict.Words,
        ["line"] = verdict.Expectation.Line,
        ["met"] = verdict.IsMet,
        ["judged"] = verdict.Judged,
        ["failure"] = verdict.Failure is not { } failure ? null : new JsonObject
        {
            ["at"] = Iso(failure.At),
            ["seen"] = failure.Seen,
            ["causes"] = new JsonArray([.. failure.Causes.Select(cause => LogText.Line(site, cause))]),
        },
    };

    private static JsonObject Hazard(RunResult result, Hazard hazard) => new()
    {
        ["kind"] = HazardWords.Key(hazard.Kind),
        ["where"] = hazard.Where,
        ["at"] = Iso(hazard.At),
        ["seen"] = hazard.Seen,
        ["backstop"] = result.Acceptance(hazard)?.Backstop,
    };

    private static JsonObject Flood(Site site, FloodRecord flood) => new()
    {
        ["rack"] = site[flood.Rack].Name,
        ["at"] = Iso(flood.At),
        ["pumpRanS"] = flood.PumpRan.TotalSeconds,
        ["trays"] = new JsonArray(
        [
            .. flood.Trays.Select(tray => new JsonObject
            {
                ["tier"] = tray.TierNumber,
                ["peakMm"] = Math.Round(tray.PeakMm, 1),
                ["filledAfterS"] = tray.Filled?.TotalSeconds,
                ["drainedAfterS"] = tray.Drained?.TotalSeconds,
            }),
        ]),
    };

    private static JsonObject Rack(Site site, RackTotals rack) => new()
    {
        ["rack"] = site[rack.Rack].Name,
        ["waterUsedL"] = Math.Round(rack.WaterUsedL, 2),
        ["spilledL"] = Math.Round(rack.SpilledL, 2),
        ["dripTrayL"] = Math.Round(rack.DripTrayL, 2),
        ["wiredFloatOpenedAfterS"] = rack.WiredFloatOpenedAfter?.TotalSeconds,
        ["wiredTimeRelayOpenedAfterS"] = rack.WiredTimeRelayOpenedAfter?.TotalSeconds,
        ["reservoirLowestL"] = Math.Round(rack.Reservoir.LowestL, 1),
        ["waterWarmestC"] = Math.Round(rack.Reservoir.WarmestC, 1),
        ["oxygenLowestMgPerL"] = Math.Round(rack.Reservoir.LowestOxygenMgPerL, 2),
        ["conductivityAtEndMsPerCm"] = Math.Round(rack.Reservoir.ConductivityMsPerCm, 3),
        ["tiers"] = new JsonArray([.. rack.TierLights.Select(Light)]),
    };

    private static JsonObject Light(TierLight light) => new()
    {
        ["tier"] = light.TierNumber,
        ["litHoursPerDay"] = Rounded(light.HoursPerDay),
        ["dailyLightMolPerM2"] = Rounded(light.DailyMolPerM2),
    };

    private static JsonObject Load(Site site, LoadTotals load) => new()
    {
        ["load"] = site[load.Load].Name,
        ["poweredS"] = load.Powered.TotalSeconds,
        ["switchedOn"] = load.SwitchedOn,
        ["energyKWh"] = Math.Round(load.EnergyKWh, 4),
    };

    private static JsonObject Circuit(Site site, CircuitTotals circuit) => new()
    {
        ["circuit"] = site[circuit.Circuit].Name,
        ["energyKWh"] = Math.Round(circuit.EnergyKWh, 4),
    };

    private static double? Rounded(double? value) => value is { } number ? Math.Round(number, 3) : null;

    private static string Iso(Instant at) => InstantPattern.ExtendedIso.Format(at);
}
