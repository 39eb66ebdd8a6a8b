using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.ProofTests;

/// <summary>How the proof tests of relays keep clear of floods.</summary>
public class RelayTestsAndFloodsTests
{
    private readonly Rig rig = new(ProofSite.Whole);

    public RelayTestsAndFloodsTests() => rig.ScanFor(Duration.FromMinutes(3));

    [Fact]
    public void ThatOfAPumpsRelaySwitchesNoPumpButWaitsForAFlood()
    {
        // Its rest is over.
        rig.LeapFor(Duration.FromMinutes(40));
        rig.Scan(new BeginProofTest("Ada", "north/pump"));
        rig.ScanFor(Duration.FromSeconds(2));
        Assert.Equal("no flood is under way: does the pump stand still?", rig.Control.ProofTestUnderWay()!.Words);
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        rig.ScanFor(Duration.FromSeconds(20));
        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal("ask for a flood: does the pump run?", rig.Control.ProofTestUnderWay()!.Words);
        rig.Scan(new FloodNow("Ada", new RackId(0)));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(2));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        Assert.Equal("passed", rig.Outcome("north/pump").What);
    }

    [Fact]
    public void OnceTheRackIsAsItNeedsItAnAnswerIsWaitedForNoLongerThanAStepMayTake()
    {
        rig.Scan(new BeginProofTest("Ada", "north/pump"));
        rig.LeapFor(Duration.FromSeconds(58));
        Assert.NotNull(rig.Control.ProofTestUnderWay());
        rig.LeapFor(Duration.FromSeconds(3));
        Assert.Equal(("abandoned", "nobody said what was seen"), rig.Outcome("north/pump"));
    }

    [Theory]
    [InlineData("north/tier 1 light", false)]
    [InlineData("north/tier 2 valve", true)]
    public void WhileThePumpRunsAValveIsNotTestedAndALightIs(string load, bool waits)
    {
        rig.Scan(new FloodNow("Ada", new RackId(0)));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan(new BeginProofTest("Ada", load));
        rig.ScanFor(Duration.FromSeconds(7));
        Assert.True(rig.IsOn("north/pump"));
        Assert.Equal(waits, rig.Control.ProofTestUnderWay()!.WaitsForRack);
        Assert.Equal(waits, rig.IsOn(load));
    }
}
