using NodaTime;
using RackController.Model;
using RackController.RackFile;

namespace RackController.Plant.Tests;

/// <summary>The geometry that a rack file gets by default, tried on the demo files.</summary>
public class DemoRackTests
{
    public static TheoryData<string> DemoFiles() =>
        [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Demo")).Select(file => Path.GetFileName(file)!).Order()];

    [Theory]
    [MemberData(nameof(DemoFiles))]
    public void EveryTierFillsBottomFirstAndDrainsWithinItsFloodCycle(string file)
    {
        var site = SiteOf(file);
        var plant = new SimulatedSite(site, PlantStart.Default);
        var full = FloodAll(site, plant);

        foreach (var rack in site.Racks)
        {
            var truth = plant.Racks[rack.Id.Index];
            // Filled from the bottom up, and within six minutes: common practice, no source.
            Assert.All(full[rack.Id.Index], time => Assert.InRange(time, 1, 360));
            Assert.Equal(full[rack.Id.Index].Order(), full[rack.Id.Index]);
            Assert.Equal(0, truth.SpilledL);
        }

        plant.AdvanceTo(plant.Reached + site.Racks.Max(rack => rack.Schedule.Floods.Drain));
        Assert.All(plant.Racks.SelectMany(rack => rack.Tiers), tier => Assert.InRange(tier.DepthMm, 0, 3));
    }

    [Theory]
    [MemberData(nameof(DemoFiles))]
    public void EveryCircuitCarriesItsWholeSchedule(string file)
    {
        var site = SiteOf(file);
        foreach (var edge in Enum.GetValues<BreakerEdge>())
        {
            var plant = new SimulatedSite(site, PlantStart.Default with { Breakers = edge });
            var now = MonotonicTime.Zero;
            var on = new RelayCommands(site);
            foreach (var load in site.Loads.Where(load => load.Kind != LoadKind.Pump))
            {
                on[load.Id] = SwitchState.On;
                plant.Write(now += site[load.Rack].Limits.SwitchingStagger, on);
            }

            plant.AdvanceTo(now + Duration.FromHours(16));
            Assert.All(plant.Circuits, circuit => Assert.True(circuit.SupplyPresent));
        }
    }

    // Seconds after which each tray has reached its standpipe; 0 for one that never does.
    private static double[][] FloodAll(Site site, SimulatedSite plant)
    {
        var full = site.Racks.Select(rack => new double[rack.Tiers.Length]).ToArray();
        var on = new RelayCommands(site);
        foreach (var load in site.Loads.Where(load => load.Kind is LoadKind.Pump or LoadKind.Valve))
        {
            on[load.Id] = SwitchState.On;
        }

        plant.Write(MonotonicTime.Zero, on);
        var end = MonotonicTime.Zero + site.Racks.Max(rack => rack.Schedule.Floods.Fill.Limit + rack.Schedule.Floods.Soak);
        while (plant.Reached < end)
        {
            plant.AdvanceTo(plant.Reached + Duration.FromSeconds(1));
            foreach (var rack in site.Racks)
            {
                var truth = plant.Racks[rack.Id.Index];
                Assert.False(truth.PumpRunsDry);
                for (var tier = 0; tier < rack.Tiers.Length; tier++)
                {
                    var isFull = truth.Tiers[tier].DepthMm >= rack.Tiers[tier].Tray.StandpipeHeightMm;
                    ref var time = ref full[rack.Id.Index][tier];
                    time = time == 0 && isFull ? (plant.Reached - MonotonicTime.Zero).TotalSeconds : time;
                }
            }
        }

        plant.Write(plant.Reached, new RelayCommands(site));
        return full;
    }

    private static Site SiteOf(string file)
    {
        var result = RackFileReader.Read(Path.Combine(AppContext.BaseDirectory, "Demo", file));
        Assert.Empty(result.Complaints);
        return result.Site!;
    }
}
