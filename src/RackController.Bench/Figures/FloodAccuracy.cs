using System.Collections.Immutable;
using System.Diagnostics;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How exact one tolerance of the integration is, and what it costs.</summary>
/// <param name="ToleranceMm">Error that one step may leave in a level, mm.</param>
/// <param name="IsDefault">Whether it is what every run uses.</param>
/// <param name="Steps">Steps for one flood and its draining.</param>
/// <param name="Took">How long that takes.</param>
/// <param name="WorstMm">Greatest difference of any level at any second from the fine solution, mm.</param>
public sealed record Accuracy(double ToleranceMm, bool IsDefault, long Steps, TimeSpan Took, double WorstMm);

/// <summary>Holds a flood cycle of the simulated rack against the same cycle integrated ten thousand times as finely.</summary>
internal static class FloodAccuracy
{
    private const double FineToleranceMm = 1e-7;
    private const int Rounds = 20;
    private static readonly Duration everySecond = Duration.FromSeconds(1);
    private static readonly ImmutableArray<double> tolerancesMm = [0.1, 0.01, 0.002, 0.001, 1e-4, 1e-5];

    public static ImmutableArray<Accuracy> AtSeveralTolerances(Site site)
    {
        var fine = Levels(site, FineToleranceMm);
        return [.. tolerancesMm.Select(toleranceMm => At(site, toleranceMm, fine))];
    }

    private static Accuracy At(Site site, double toleranceMm, List<double> fine)
    {
        var cycle = new FloodCycles(site, Start(toleranceMm));
        cycle.Run(1);
        var steps = cycle.Steps;
        cycle.Run(Rounds);
        var started = Stopwatch.GetTimestamp();
        cycle.Run(Rounds);
        var took = Stopwatch.GetElapsedTime(started) / Rounds;
        var worstMm = Levels(site, toleranceMm).Zip(fine, (mm, fineMm) => Math.Abs(mm - fineMm)).Max();
        return new Accuracy(toleranceMm, toleranceMm == PlantStart.Default.LevelToleranceMm, steps, took, worstMm);
    }

    // Of the trays and the reservoir, second by second.
    private static List<double> Levels(Site site, double toleranceMm)
    {
        var levelsMm = new List<double>();
        var cycle = new FloodCycles(site, Start(toleranceMm));
        cycle.Run(1, everySecond, () =>
        {
            levelsMm.Add(cycle.Rack.ReservoirLevelMm);
            levelsMm.AddRange(cycle.Rack.Tiers.Select(tier => tier.DepthMm));
        });
        return levelsMm;
    }

    private static PlantStart Start(double toleranceMm) => PlantStart.Default with { LevelToleranceMm = toleranceMm };
}
