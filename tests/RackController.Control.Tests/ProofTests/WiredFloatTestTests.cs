using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.ProofTests;

/// <summary>The proof test of the float in the pump's own wire: what a person sees of the pump is all that there is to go by.</summary>
public class WiredFloatTestTests
{
    private const string Float = "north/wired float";
    private static readonly Site site = ProofSite.Whole with
    {
        Racks = [.. ProofSite.Whole.Racks.Select(rack => rack with { FloatCutout = new FloatCutout(1, 60) })],
    };

    private readonly Rig rig = new(site);

    public WiredFloatTestTests() => rig.ScanFor(Duration.FromMinutes(3));

    [Fact]
    public void ItIsTestedInAFloodByThePumpThatStopsAndRunsAgain()
    {
        rig.Scan(new BeginProofTest("Ada", Float));
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.True(rig.Control.ProofTestUnderWay()!.WaitsForRack);
        rig.Scan(new FloodNow("Ada", new RackId(0)));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        string[] asked = ["the pump run?", "the pump stand still?", "the pump still stand still?", "the pump run again?"];
        foreach (var question in asked)
        {
            rig.ScanFor(Duration.FromSeconds(2));
            Assert.EndsWith(question, rig.Control.ProofTestUnderWay()!.Words, StringComparison.Ordinal);
            Assert.True(rig.Control.ProofTestUnderWay()!.AsksPerson);
            rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        }

        Assert.Equal("passed", rig.Outcome(Float).What);
        Assert.NotNull(rig.Test(Float).PassedAt);
    }

    [Fact]
    public void APumpThatRunsOnFailsIt()
    {
        rig.Scan(new BeginProofTest("Ada", Float), new FloodNow("Ada", new RackId(0)));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(2));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        rig.ScanFor(Duration.FromSeconds(2));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: false));
        Assert.Equal(("failed", "Ada saw otherwise"), rig.Outcome(Float));
        Assert.True(rig.Test(Float).HasFailed);
    }

    [Fact]
    public void TheStepThatAFloodWasTooShortForWaitsForTheNext()
    {
        rig.Scan(new BeginProofTest("Ada", Float), new FloodNow("Ada", new RackId(0)));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(2));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true), new Stop("Ada", new RackId(0)));
        rig.ScanFor(Duration.FromMinutes(2));
        Assert.Equal((2, true), (rig.Control.ProofTestUnderWay()!.Step, rig.Control.ProofTestUnderWay()!.WaitsForRack));
    }

    [Fact]
    public void ItIsDueAsFloatsAreAndOnlyWhereThereIsOne()
    {
        Assert.Equal((ProofTestKind.WiredFloat, site.Racks[0].Limits.FloatTestInterval), (rig.Test(Float).Kind, rig.Test(Float).Interval));
        Assert.DoesNotContain(new Rig(ProofSite.Whole).Control.ProofTests(), test => test.Kind == ProofTestKind.WiredFloat);
    }
}
