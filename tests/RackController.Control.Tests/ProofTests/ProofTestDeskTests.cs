using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.ProofTests;

/// <summary>How a proof test begins, goes on and ends.</summary>
public class ProofTestDeskTests
{
    private const string Rope = "north/leak rope";
    private const string Light = "north/tier 1 light";
    private readonly Rig rig = new(ProofSite.Whole);

    public ProofTestDeskTests() => rig.ScanFor(Duration.FromMinutes(3));

    private string Answer => rig.Events.Last(happened => happened.Kind == EventKind.Request).What;

    [Fact]
    public void EveryContactCurrentSensorAndRelayHasOne() => Assert.Equal(
        rig.Site.Sensors.Where(sensor => sensor.IsContact || sensor.Kind == SensorKind.CircuitCurrent).Select(sensor => sensor.Name)
            .Concat(rig.Site.Loads.Select(load => load.Name)),
        rig.Control.ProofTests().Select(test => test.Item));

    [Fact]
    public void EveryStepIsAnEventThatSaysWho()
    {
        rig.TestContact(Rope);
        Assert.Equal(
            [
                ("step 1 of 2: wet the rope until it reads wet, with the rack's plug pulled", "Ada tests it"),
                ("step 2 of 2: dry the rope until it reads dry", "Ada tests it"),
                ("passed", "Ada saw it through"),
            ],
            rig.Events.Where(happened => happened.Kind == EventKind.ProofTest).Select(happened => (happened.What, happened.Because)));
    }

    [Fact]
    public void AnItemThatTheSiteDoesNotHaveHasNone()
    {
        rig.Scan(new BeginProofTest("Ada", "north/reservoir level"));
        Assert.Equal("proof test: north/reservoir level has none", Answer);
        Assert.Null(rig.Control.ProofTestUnderWay());
    }

    [Fact]
    public void OnlyOneIsUnderWay()
    {
        rig.Scan(new BeginProofTest("Ada", Rope));
        Assert.Equal("proof test: begun", Answer);
        rig.Scan(new BeginProofTest("Ben", Light));
        Assert.Equal($"proof test: that of {Rope} is under way; see it through or abandon it first", Answer);
    }

    [Fact]
    public void WhatNothingAsksIsNotAnswered()
    {
        rig.Scan(new AnswerProofTest("Ada", AsExpected: false));
        Assert.Equal("proof test: no proof test is under way", Answer);
        rig.Scan(new BeginProofTest("Ada", Rope));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: false));
        Assert.Equal($"proof test: that of {Rope} asks nothing now", Answer);
        rig.Scan(new AbandonProofTest("Ada"), new BeginProofTest("Ada", "north/pump"), new AnswerProofTest("Ada", AsExpected: false));
        Assert.Equal("proof test: that of north/pump asks nothing now", Answer);
        Assert.DoesNotContain(rig.Control.ProofTests(), test => test.HasFailed);
    }

    [Theory]
    [InlineData(true, "proof test: it was so")]
    [InlineData(false, "proof test: it was not so")]
    public void AnAnswerIsTaken(bool asExpected, string words)
    {
        rig.Scan(new BeginProofTest("Ada", Light));
        rig.ScanFor(Duration.FromSeconds(7));
        rig.Scan(new AnswerProofTest("Ada", asExpected));
        Assert.Equal(words, Answer);
    }

    [Fact]
    public void AnAnswerIsForItsOwnStep()
    {
        rig.Scan(new BeginProofTest("Ada", Light));
        rig.ScanFor(Duration.FromSeconds(7));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        rig.ScanFor(Duration.FromSeconds(20));
        Assert.Equal(2, rig.Control.ProofTestUnderWay()!.Step);
    }

    [Fact]
    public void OneThatIsAbandonedCountsForNothing()
    {
        rig.Scan(new BeginProofTest("Ada", Rope));
        rig.Scan(new AbandonProofTest("Ben"));
        Assert.Equal($"proof test: that of {Rope} is abandoned", Answer);
        Assert.Equal(("abandoned", "Ben ended it"), rig.Outcome(Rope));
        rig.LeapFor(Duration.FromMinutes(2));
        Assert.Equal((null, false), (rig.Test(Rope).PassedAt, rig.Test(Rope).HasFailed));

        rig.Scan(new AbandonProofTest("Ben"));
        Assert.Equal("proof test: no proof test is under way", Answer);
    }

    [Fact]
    public void ARestartEndsIt()
    {
        rig.Scan(new BeginProofTest("Ada", Rope));
        rig.Restart(Duration.FromSeconds(10));
        rig.LeapFor(Duration.FromMinutes(2));
        Assert.Equal((null, false), (rig.Test(Rope).PassedAt, rig.Test(Rope).HasFailed));
        Assert.Null(rig.Control.ProofTestUnderWay());
    }

    [Fact]
    public void ItsProgressSaysWhatToDoAndHowLongThereIs()
    {
        rig.Scan(new BeginProofTest("Ada", Rope));
        rig.ScanFor(Duration.FromSeconds(20));
        Assert.Equal(
            new ProofTestProgress(
                Rope, 1, 2, "wet the rope until it reads wet, with the rack's plug pulled", AsksPerson: false, WaitsForRack: false,
                Duration.FromSeconds(40)),
            rig.Control.ProofTestUnderWay());

        rig.Scan(new AbandonProofTest("Ada"), new BeginProofTest("Ada", "north/pump"));
        Assert.Equal((true, false), (rig.Control.ProofTestUnderWay()!.AsksPerson, rig.Control.ProofTestUnderWay()!.WaitsForRack));
    }

    [Fact]
    public void AFailureIsForgottenOnlyByAPass()
    {
        rig.Scan(new BeginProofTest("Ada", Rope));
        rig.LeapFor(Duration.FromMinutes(2));
        rig.Restart(Duration.FromHours(1));
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.True(rig.Test(Rope).HasFailed);
        rig.TestContact(Rope);
        Assert.False(rig.Test(Rope).HasFailed);
        rig.Restart(Duration.FromHours(1));
        Assert.False(rig.Test(Rope).HasFailed);
    }
}
