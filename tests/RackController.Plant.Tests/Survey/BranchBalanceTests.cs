using RackController.Model;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Plant.Tests.Survey;

public class BranchBalanceTests
{
    [Fact]
    public void EachTierGetsALittleMoreThanTheOneAboveIt()
    {
        var site = Sites.OneRack(4);
        var flows = FloodSurvey.Of(site, BranchBalance.Of(site.Racks[0])!).Tiers.Select(tier => tier.FlowLpm).ToList();

        // 3 % from tier to tier; losses are rounded to half a unit, which moves a flow by up to 2 %.
        Assert.All(flows.Zip(flows.Skip(1)), pair => Assert.InRange(pair.First / pair.Second, 1.01, 1.05));
    }

    [Fact]
    public void ItAgreesWithTheThrottlingThatARackFileGetsByDefault()
    {
        var rack = RackFileReader.Read(Path.Combine(AppContext.BaseDirectory, "Demo", "demo-four-tier.yaml")).Site!.Racks[0];
        var balanced = BranchBalance.Of(rack)!;

        Assert.All(rack.Tiers.Zip(balanced.Tiers), pair =>
            Assert.Equal(pair.First.Branch.MinorLossK, pair.Second.Branch.MinorLossK, 0.5));
    }

    [Fact]
    public void APumpThatCannotReachEveryTierBalancesNothing()
    {
        var rack = Sites.OneRack(4).Racks[0];
        Assert.Null(BranchBalance.Of(rack with { Pump = rack.Pump with { Curve = new PumpCurve(1, 60, 2) } }));
    }
}
