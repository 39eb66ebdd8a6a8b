using CsCheck;
using NodaTime;
using RackController.Bench.Tests.Support;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench.Tests.Running;

/// <summary>Metamorphic: on any rack, whatever goes wrong and whenever, leaping over quiet times and making every scan of the grid come
/// to the same. <c>CsCheck_Iter</c> in the environment makes as many runs as one likes.</summary>
public sealed class LeapTests
{
    [Fact]
    public void LeapingAndScanningComeToTheSameLogVerdictsHazardsAndSums() => RandomScenes.Any.Sample(
        scene =>
        {
            var leapt = ScenarioRun.Run(scene);
            var scanned = ScenarioRun.Run(scene, everyScan: true);
            var difference = FirstDifference(LogText.Of(scanned), LogText.Of(leapt));
            Assert.True(difference is null, difference);
            Assert.Equal(scanned.Verdicts.Select(Outcome), leapt.Verdicts.Select(Outcome));
            Assert.Equal(scanned.Hazards.Select(Outcome), leapt.Hazards.Select(Outcome));
            Assert.All(scanned.Racks.Zip(leapt.Racks), pair => Assert.Equal(Sums(pair.First), Sums(pair.Second)));
            Assert.All(scanned.Loads.Zip(leapt.Loads), pair => Assert.Equal(pair.First, pair.Second));
            Assert.All(scanned.Circuits.Zip(leapt.Circuits), pair => Assert.Equal(pair.First, pair.Second));
        },
        threads: 1, print: SceneWords.Of);

    // Wherever the run that leaps looks, the other sees the same to the last bit.
    [Fact]
    public void LeapingAndScanningSeeTheSameLevels() => RandomScenes.Any.Sample(
        scene =>
        {
            var end = MonotonicTime.Zero + scene.Length;
            var leaping = Begun(scene, leaps: true);
            var scanning = Begun(scene, leaps: false);
            while (leaping.Step(end))
            {
                while (scanning.Plant.Reached < leaping.Plant.Reached)
                {
                    Assert.True(scanning.Step(end));
                }

                Assert.Equal(scanning.Plant.Racks.SelectMany(Levels), leaping.Plant.Racks.SelectMany(Levels));
            }
        },
        threads: 1, print: SceneWords.Of);

    // The lines where two logs part say more than a place in a long text.
    private static string? FirstDifference(string scanned, string leapt)
    {
        var lines = scanned.Split('\n').Zip(leapt.Split('\n')).FirstOrDefault(pair => pair.First != pair.Second);
        return scanned == leapt ? null : $"scanned: {lines.First}\nleapt:   {lines.Second}";
    }

    private static VirtualRun Begun(Scenario scene, bool leaps)
    {
        var run = new VirtualRun(scene.Site, scene.Start, scene.Events, scene.Found, scene.Room, leaps);
        run.Begin();
        return run;
    }

    private static IEnumerable<double> Levels(RackTruth rack) =>
    [
        rack.ReservoirLevelMm, rack.SpilledL, rack.PumpFlowLpm, rack.WaterTemperatureC, rack.PumpedL, rack.WaterUsedL,
        rack.DissolvedOxygenMgPerL, rack.ConductivityMsPerCm,
        .. rack.Tiers.SelectMany(tier => new[] { tier.DepthMm, tier.MediaWaterL, tier.AirTemperatureC, tier.AirHumidityPercent }),
    ];

    private static (double SpilledL, double WaterUsedL) Sums(RackTotals totals) => (totals.SpilledL, totals.WaterUsedL);

    private static (bool IsMet, Duration? Elapsed) Outcome(Verdict verdict) => (verdict.IsMet, verdict.Failure?.Elapsed);

    private static (HazardKind Kind, string Where, Duration Elapsed) Outcome(Hazard hazard) =>
        (hazard.Kind, hazard.Where, hazard.Elapsed);
}
