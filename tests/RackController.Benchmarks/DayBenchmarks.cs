using BenchmarkDotNet.Attributes;
using NodaTime;
using RackController.Bench;
using RackController.Model;

namespace RackController.Benchmarks;

/// <summary>What a simulated day costs, of one rack and of sixty-four.</summary>
public class DayBenchmarks
{
    private readonly Scenario one = DayOf(FigureSites.Of(racks: 1));
    private readonly Scenario sixtyFour = DayOf(FigureSites.Of(racks: 64));

    [Benchmark]
    public RunResult OneRack() => ScenarioRun.Run(one);

    [Benchmark]
    public RunResult SixtyFourRacks() => ScenarioRun.Run(sixtyFour);

    private static Scenario DayOf(Site site) => new()
    {
        Name = "day",
        About = "One quiet day.",
        File = "",
        RackFile = "",
        Site = site,
        Start = Instant.FromUtc(2026, 3, 1, 0, 0),
        Length = Duration.FromDays(1),
        Events = [],
        Expectations = [],
        Accepts = [],
    };
}
