using BenchmarkDotNet.Attributes;
using RackController.Model;

namespace RackController.Benchmarks;

/// <summary>What one scan of the controller costs, with the sensors' new times written into the readings.</summary>
public class ControlBenchmarks
{
    private readonly SteadyRack one = new(FigureSites.Of(racks: 1));
    private readonly SteadyRack sixtyFour = new(FigureSites.Of(racks: 64));

    [Benchmark]
    public RelayCommands OneRackAtRest() => one.Scan();

    [Benchmark]
    public RelayCommands OneRackWithMovingReadings() => one.ScanMoving();

    [Benchmark]
    public RelayCommands SixtyFourRacksAtRest() => sixtyFour.Scan();

    [Benchmark]
    public RelayCommands SixtyFourRacksWithMovingReadings() => sixtyFour.ScanMoving();
}
