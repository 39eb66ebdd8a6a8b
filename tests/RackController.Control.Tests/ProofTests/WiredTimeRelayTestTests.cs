using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.ProofTests;

/// <summary>The proof test of the time relay in the pump's own wire: what a person sees of the pump is all that there is.</summary>
public class WiredTimeRelayTestTests
{
    private const string Relay = "north/wired time relay";
    private static readonly Site site = ProofSite.Whole with
    {
        Racks = [.. ProofSite.Whole.Racks.Select(rack => rack with { TimeCutout = new TimeCutout(Duration.FromMinutes(20)) })],
    };

    private readonly Rig rig = new(site);

    public WiredTimeRelayTestTests() => rig.ScanFor(Duration.FromMinutes(3));

    [Fact]
    public void ItIsTestedInAFloodByThePumpThatStopsByItself()
    {
        BeginInAFlood();
        Assert.EndsWith("does the pump run?", rig.Control.ProofTestUnderWay()!.Words, StringComparison.Ordinal);
        Answer(asExpected: true);
        Assert.EndsWith("does the pump stand still by itself?", rig.Control.ProofTestUnderWay()!.Words, StringComparison.Ordinal);
        Answer(asExpected: true);
        Assert.EndsWith("does it show 20 min?", rig.Control.ProofTestUnderWay()!.Words, StringComparison.Ordinal);
        Assert.True(rig.Control.ProofTestUnderWay()!.WaitsForRack);
        rig.Scan(new Stop("Ada", new RackId(0)));
        rig.ScanFor(Duration.FromSeconds(2));
        Assert.False(rig.Control.ProofTestUnderWay()!.WaitsForRack);
        Answer(asExpected: true);
        Assert.Equal("passed", rig.Outcome(Relay).What);
    }

    [Fact]
    public void APumpThatRunsOnFailsIt()
    {
        BeginInAFlood();
        Answer(asExpected: true);
        Answer(asExpected: false);
        Assert.Equal(("failed", "Ada saw otherwise"), rig.Outcome(Relay));
        Assert.True(rig.Test(Relay).HasFailed);
    }

    [Fact]
    public void ItIsDueAsRelaysAreAndOnlyWhereThereIsOne()
    {
        Assert.Equal(
            (ProofTestKind.WiredTimeRelay, site.Racks[0].Limits.RelayTestInterval), (rig.Test(Relay).Kind, rig.Test(Relay).Interval));
        Assert.DoesNotContain(new Rig(ProofSite.Whole).Control.ProofTests(), test => test.Kind == ProofTestKind.WiredTimeRelay);
    }

    private void BeginInAFlood()
    {
        rig.Scan(new BeginProofTest("Ada", Relay), new FloodNow("Ada", new RackId(0)));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(2));
    }

    private void Answer(bool asExpected)
    {
        rig.Scan(new AnswerProofTest("Ada", asExpected));
        rig.ScanFor(Duration.FromSeconds(2));
    }
}
