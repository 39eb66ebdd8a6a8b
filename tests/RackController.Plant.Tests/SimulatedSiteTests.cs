using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class SimulatedSiteTests
{
    private static MonotonicTime At(double seconds) => new((long)(seconds * 1e9));

    [Fact]
    public void AFloodFillsEveryTrayToItsStandpipeAndDrainsAgain()
    {
        var site = Sites.OneRack(4);
        var plant = new SimulatedSite(site, PlantStart.Default);
        var commands = new RelayCommands(site);
        commands[site.LoadNamed("north/pump")] = SwitchState.On;
        for (var tier = 1; tier <= 4; tier++)
        {
            commands[site.LoadNamed($"north/tier {tier} valve")] = SwitchState.On;
        }

        plant.Write(At(1), commands);
        plant.AdvanceTo(At(600));
        var depths = plant.Racks[0].Tiers.Select(tier => tier.DepthMm).ToArray();
        Assert.All(depths, depth => Assert.InRange(depth, 44, 60));

        plant.Write(At(600), new RelayCommands(site));
        plant.AdvanceTo(At(2400));
        Assert.All(plant.Racks[0].Tiers, tier => Assert.InRange(tier.DepthMm, 0, 0.5));
        Assert.Equal(0, plant.Racks[0].SpilledL);
    }
}
