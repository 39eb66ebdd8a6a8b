using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.TimeZones;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What the charts of a report are drawn from, as JSON inside the page. Times are seconds since the run began;
/// the page turns them into local time by the zone's offsets, so that a day of 23 hours is drawn as one.</summary>
internal static class ChartData
{
    public static string Of(RunResult result) => JsonSerializer.Serialize(Document(result), ChartContext.Default.ChartDocument);

    private static ChartDocument Document(RunResult result)
    {
        var scenario = result.Scenario;
        var site = scenario.Site;
        return new ChartDocument(
            scenario.Start.ToUnixTimeSeconds(), scenario.Length.TotalSeconds, Offsets(scenario),
            [.. site.Racks.Select(rack => Rack(result, rack))],
            [.. site.Circuits.Select(circuit => new ChartCircuit(
                circuit.Name, circuit.ContinuousLimitA, circuit.BreakerA, Curve(result.Charts.Currents[circuit.Id.Index])))],
            [.. Ordered(site).Select(load => Load(result, load))],
            [.. Marks(result)]);
    }

    private static ImmutableArray<double[]> Offsets(Scenario scenario) =>
    [
        .. scenario.Site.Zone.GetZoneIntervals(scenario.Start, scenario.Start + scenario.Length + Duration.FromDays(1))
            .Select(interval => new[] { Since(scenario, interval), (double)interval.WallOffset.Seconds }),
    ];

    private static double Since(Scenario scenario, ZoneInterval interval) =>
        interval.HasStart ? (interval.Start - scenario.Start).TotalSeconds : -1e12;

    private static ChartRack Rack(RunResult result, Rack rack)
    {
        var lowFloat = result.Scenario.Site.Sensors.FirstOrDefault(
            sensor => sensor.Rack == rack.Id && sensor.Kind == SensorKind.ReservoirLowFloat);
        return new ChartRack(
            rack.Name,
            [
                .. rack.Tiers.Select(tier => new ChartTray(
                    tier.Number, tier.Tray.StandpipeHeightMm, tier.Tray.RimDepthMm,
                    Curve(result.Charts.Depths[rack.Id.Index][tier.Number - 1]))),
            ],
            Curve(result.Charts.Reservoirs[rack.Id.Index]), rack.Reservoir.CapacityL,
            Curve(result.Charts.Warmth[rack.Id.Index]), Curve(result.Charts.Oxygen[rack.Id.Index]),
            Curve(result.Charts.Conductivity[rack.Id.Index], 4),
            [.. result.Charts.VapourDeficits[rack.Id.Index].Select(trend => Curve(trend))],
            lowFloat is null ? null : Math.Round(lowFloat.HeightMm * rack.Reservoir.AreaM2, 1));
    }

    private static ChartCurve Curve(Trend trend, int digits = 2) => new(
        [.. trend.Points.Select(point => Math.Round(point.Seconds, 1))],
        [.. trend.Points.Select(point => Math.Round(point.Value, digits))]);

    // Water first, then light from the top tier down as on the rack, then air.
    private static IEnumerable<Load> Ordered(Site site) => site.Loads
        .OrderBy(load => load.Rack.Index).ThenBy(load => load.Kind).ThenByDescending(load => load.TierNumber ?? 0);

    private static ChartLoad Load(RunResult result, Load load)
    {
        var stretches = result.Charts.Timeline.Of(load.Id);
        return new ChartLoad(
            load.Name, load.Kind.ToString().ToLowerInvariant(),
            [.. stretches.Select(stretch => stretch.From.TotalSeconds)],
            [.. stretches.Select(stretch => (stretch.Until - stretch.From).TotalSeconds)]);
    }

    private static IEnumerable<ChartMark> Marks(RunResult result)
    {
        foreach (var entry in result.Log.Where(entry => entry.Kind is null))
        {
            yield return new ChartMark(entry.Elapsed.TotalSeconds, entry.Subject, false);
        }

        foreach (var verdict in result.Verdicts)
        {
            if (verdict.Failure is { } failure)
            {
                yield return new ChartMark(failure.Elapsed.TotalSeconds, $"not met: {verdict.Expectation.Name}", true);
            }
        }

        foreach (var hazard in result.Hazards)
        {
            yield return new ChartMark(hazard.Elapsed.TotalSeconds, HazardWords.Title(hazard.Kind), true);
        }
    }
}

internal sealed record ChartDocument(
    long StartEpochS, double LengthS, ImmutableArray<double[]> Offsets, ImmutableArray<ChartRack> Racks,
    ImmutableArray<ChartCircuit> Circuits, ImmutableArray<ChartLoad> Loads, ImmutableArray<ChartMark> Marks);

internal sealed record ChartRack(
    string Name, ImmutableArray<ChartTray> Trays, ChartCurve Reservoir, double CapacityL, ChartCurve WaterC, ChartCurve OxygenMgPerL,
    ChartCurve ConductivityMsPerCm, ImmutableArray<ChartCurve> VapourDeficitKPa, double? LowFloatL);

internal sealed record ChartTray(int Tier, double StandpipeMm, double RimMm, ChartCurve Depth);

internal sealed record ChartCircuit(string Name, double LimitA, double BreakerA, ChartCurve Current);

internal sealed record ChartCurve(ImmutableArray<double> S, ImmutableArray<double> V);

internal sealed record ChartLoad(string Name, string Kind, ImmutableArray<double> FromS, ImmutableArray<double> ForS);

internal sealed record ChartMark(double AtS, string What, bool IsAbnormal);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ChartDocument))]
internal sealed partial class ChartContext : JsonSerializerContext;
