using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Desk;

/// <summary>Requests for what is not there.</summary>
public class EdgeTests
{
    [Fact]
    public void ALatchThatDoesNotExistIsNotLatched()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan(new ResetLatch("Ada", "attic/x"));
        Assert.Equal("reset: attic/x is not latched", rig.Events.Last(each => each.Kind == EventKind.Request).What);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    public void ATierThatARackDoesNotHaveIsNeitherInUseNorOutOfIt(int tier)
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan(new SetTierInUse("Ada", new RackId(0), tier, InUse: false));
        Assert.Equal($"north has no tier {tier}; its tiers are 1 to 2", rig.Events.Last(each => each.Kind == EventKind.Request).What);
        Assert.True(rig.Control.IsTierInUse(new RackId(0), 1));
    }

    [Fact]
    public void AStopOfOneRackLeavesTheOthersAtWork()
    {
        var rig = new Rig(Sites.ManyRacks(2, racksToACircuit: 2));
        rig.LeapUntil(() => rig.IsOn("rack 1/tier 1 light") && rig.IsOn("rack 2/tier 1 light"));
        rig.Scan(new Stop("Ada", new RackId(1)));
        Assert.True(rig.IsOn("rack 1/tier 1 light"));
        Assert.False(rig.IsOn("rack 2/tier 1 light"));
    }

    [Fact]
    public void ARequestThatTheDeskDoesNotKnowIsADefect()
    {
        var rig = new Rig(Sites.OneRack());
        Assert.Throws<InvariantBrokenException>(() => rig.Scan(new Sing("Ada")));
    }

    private sealed record Sing(string By) : OperatorRequest(By);
}
