using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.RackFile.Tests;

/// <summary>The shape that the reader gives to a rack that leaves it out must work: wide-open branches would starve the upper
/// tiers.</summary>
public sealed class DemoRackFillsTests
{
    private const double StillWetMm = 1;

    public static TheoryData<string, string> Racks() => new()
    {
        { "demo-first-rack.yaml", "first" },
        { "demo-four-tier.yaml", "north" },
        { "demo-three-racks.yaml", "herbs" },
        { "demo-three-racks.yaml", "greens" },
        { "demo-three-racks.yaml", "shoots" },
    };

    [Theory]
    [MemberData(nameof(Racks))]
    public void EveryTrayFillsInTimeFromTheBottomUpAndDrainsInTime(string file, string name)
    {
        var site = RackFileReader.Read(Files.Config(file)).Site!;
        var rack = site.Racks.Single(one => one.Name == name);
        var floods = rack.Schedule.Floods;
        var pumpRun = floods.Fill.Limit + floods.Soak;
        var plant = new SimulatedSite(site, PlantStart.Default);
        var truth = plant.Racks[rack.Id.Index];
        var commands = new RelayCommands(site);

        Water(SwitchState.On, Duration.Zero);
        var fullAt = FirstFull(plant, rack, pumpRun);
        Water(SwitchState.Off, pumpRun);
        plant.AdvanceTo(MonotonicTime.Zero + pumpRun + floods.Drain);

        Assert.All(fullAt, at => Assert.InRange(at, Duration.FromSeconds(30), floods.Fill.Limit));
        Assert.Equal(fullAt.Order(), fullAt);
        Assert.All(truth.Tiers, tier => Assert.True(tier.DepthMm < StillWetMm, $"{tier.DepthMm} mm are left"));
        Assert.Equal(0, truth.SpilledL);

        void Water(SwitchState state, Duration at)
        {
            foreach (var load in site.Loads.Where(load => load.Rack == rack.Id && load.Kind is LoadKind.Pump or LoadKind.Valve))
            {
                commands[load.Id] = state;
            }

            Assert.True(plant.Write(MonotonicTime.Zero + at, commands).IsOk);
        }
    }

    /// <summary>When each tray reached its standpipe, to the second.</summary>
    private static Duration[] FirstFull(SimulatedSite plant, Rack rack, Duration pumpRun)
    {
        var fullAt = rack.Tiers.Select(_ => Duration.MaxValue).ToArray();
        for (var time = Duration.Zero; time < pumpRun; time += Duration.FromSeconds(1))
        {
            plant.AdvanceTo(MonotonicTime.Zero + time);
            for (var index = 0; index < fullAt.Length; index++)
            {
                if (plant.Racks[rack.Id.Index].Tiers[index].DepthMm >= rack.Tiers[index].Tray.StandpipeHeightMm)
                {
                    fullAt[index] = Duration.Min(fullAt[index], time);
                }
            }
        }

        return fullAt;
    }
}
