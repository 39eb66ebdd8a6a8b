using BenchmarkDotNet.Attributes;
using RackController.Bench;

namespace RackController.Benchmarks;

/// <summary>What a simulated day costs, of one rack and of sixty-four.</summary>
public class DayBenchmarks
{
    private readonly Scenario one = FigureRuns.OfDays(FigureSites.Of(racks: 1), days: 1);
    private readonly Scenario sixtyFour = FigureRuns.OfDays(FigureSites.Of(racks: 64), days: 1);

    [Benchmark]
    public RunResult OneRack() => ScenarioRun.Run(one);

    [Benchmark]
    public RunResult SixtyFourRacks() => ScenarioRun.Run(sixtyFour);
}
