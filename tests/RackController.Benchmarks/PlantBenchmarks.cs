using BenchmarkDotNet.Attributes;
using NodaTime;
using RackController.Bench;
using RackController.Plant;

namespace RackController.Benchmarks;

/// <summary>What the simulated rack costs without a controller.</summary>
public class PlantBenchmarks
{
    private readonly SimulatedSite resting = new(FigureSites.Of(racks: 1), PlantStart.Default);
    private readonly FloodCycles flooding = new(FigureSites.Of(racks: 1), PlantStart.Default);

    [Benchmark]
    public void ATenthOfASecondAtRest() => resting.AdvanceTo(resting.Reached + Duration.FromMilliseconds(100));

    [Benchmark]
    public void AnHourAtRest() => resting.AdvanceTo(resting.Reached + Duration.FromHours(1));

    [Benchmark]
    public void AFloodAndItsDraining() => flooding.Run(1);
}
