using BenchmarkDotNet.Attributes;
using RackController.Bench;

namespace RackController.Benchmarks;

/// <summary>What one scan of the controller costs, with the sensors' new times written into the readings.</summary>
public class ControlBenchmarks
{
    private readonly SteadyRack one = new(FigureSites.Of(racks: 1));
    private readonly SteadyRack sixtyFour = new(FigureSites.Of(racks: 64));

    [Benchmark]
    public void OneRackAtRest() => one.Scan();

    [Benchmark]
    public void OneRackWithMovingReadings() => one.ScanMoving();

    [Benchmark]
    public void SixtyFourRacksAtRest() => sixtyFour.Scan();

    [Benchmark]
    public void SixtyFourRacksWithMovingReadings() => sixtyFour.ScanMoving();
}
