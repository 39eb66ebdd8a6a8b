using BenchmarkDotNet.Attributes;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Benchmarks;

/// <summary>What a step of the simulated rack costs: a tenth of a second, and a minute at rest.</summary>
public class PlantBenchmarks
{
    private static readonly Duration Tenth = Duration.FromMilliseconds(100);
    private readonly SimulatedSite resting = new(FigureSites.Of(racks: 1), PlantStart.Default);
    private readonly SimulatedSite pumping = Pumping();

    [Benchmark]
    public void ATenthOfASecondAtRest() => resting.AdvanceTo(resting.Reached + Tenth);

    [Benchmark]
    public void AMinuteAtRest() => resting.AdvanceTo(resting.Reached + Duration.FromMinutes(1));

    [Benchmark]
    public void ATenthOfASecondOfPumping() => pumping.AdvanceTo(pumping.Reached + Tenth);

    private static SimulatedSite Pumping()
    {
        var site = FigureSites.Of(racks: 1);
        var plant = new SimulatedSite(site, PlantStart.Default);
        var commands = new RelayCommands(site);
        foreach (var load in site.Loads)
        {
            commands[load.Id] = load.Kind is LoadKind.Pump or LoadKind.Valve ? SwitchState.On : load.SafeState;
        }

        plant.Write(plant.Reached, commands);
        plant.AdvanceTo(plant.Reached + Duration.FromMinutes(2));
        return plant;
    }
}
