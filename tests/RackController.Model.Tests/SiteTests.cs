using RackController.Testing;

namespace RackController.Model.Tests;

public class SiteTests
{
    private static readonly Site Site = Sites.OneRack();

    [Fact]
    public void AnIdentityLeadsToTheThingThatCarriesIt()
    {
        Assert.All(Site.Loads, load => Assert.Same(load, Site[load.Id]));
        Assert.All(Site.Sensors, sensor => Assert.Same(sensor, Site[sensor.Id]));
        Assert.All(Site.Racks, rack => Assert.Same(rack, Site[rack.Id]));
        Assert.All(Site.Circuits, circuit => Assert.Same(circuit, Site[circuit.Id]));
    }

    [Fact]
    public void TierOneIsTheLowest()
    {
        var rack = Site.Racks[0];
        Assert.All(rack.Tiers, tier => Assert.Same(tier, rack.Tier(tier.Number)));
        Assert.True(rack.Tier(1).TrayFloorHeightMm < rack.Tier(2).TrayFloorHeightMm);
    }

    // 1 L over 1 m2 stands 1 mm deep: 230 L, 480 mm deep, stand on 230 / 480 m2.
    [Fact]
    public void AReservoirsAreaFollowsFromItsVolumeAndDepth()
    {
        var reservoir = Site.Racks[0].Reservoir with { CapacityL = 230, DepthMm = 480 };
        Assert.Equal(0.479_167, reservoir.AreaM2, 6);
    }
}
