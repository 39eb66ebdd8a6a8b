using RackController.Testing;

namespace RackController.Plant.Tests;

public class RackPipesTests
{
    [Fact]
    public void PipesHoldTheirSectionTimesTheirLength()
    {
        // Half a metre of pipe of 20 mm and a quarter of one of 10 mm: 50 x pi x 1 cm2 + 25 x pi x 0.25 cm2 = 176.7 mL.
        var template = Sites.OneRack(1).Racks[0];
        var rack = template with
        {
            Supply = template.Supply with { BoreMm = 20, RunLengthMm = 500 },
            Tiers = [template.Tiers[0] with { Branch = template.Tiers[0].Branch with { BoreMm = 10, LengthMm = 250 } }],
        };
        Assert.Equal(176.7e-6, RackPipes.ContentM3(rack), 0.1e-6);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void APumpThatStopsKeepsItsPipesFullOnlyBehindACheckValve(bool hasCheckValve)
    {
        var site = Sites.OneRack(2).WithRack(rack => rack with { Supply = rack.Supply with { HasCheckValve = hasCheckValve } });
        var rack = new TestSite(2, site: site);
        rack.Flood();
        rack.To(10);
        var full = rack.Truth.PipesL;
        Assert.Equal(RackPipes.ContentM3(site.Racks[0]) * 1000, full, 1e-9);

        var balance = rack.Truth.BalanceL;
        rack.Stop();
        Assert.Equal(hasCheckValve ? full : 0, rack.Truth.PipesL, 1e-9);
        Assert.Equal(balance, rack.Truth.BalanceL, 1e-9);
    }
}
