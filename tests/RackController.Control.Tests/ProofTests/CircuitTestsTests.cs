using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.ProofTests;

/// <summary>The proof tests of relays and current sensors.</summary>
public class CircuitTestsTests
{
    private const string Light = "north/tier 1 light";
    private readonly Rig rig = new(ProofSite.Whole);

    public CircuitTestsTests() => rig.ScanFor(Duration.FromMinutes(3));

    [Theory]
    [InlineData(Light)]
    [InlineData("north/aerator")]
    [InlineData("north/tier 2 valve")]
    public void ARelayThatAPersonSawSwitchBothWaysPasses(string load)
    {
        rig.Scan(new BeginProofTest("Ada", load));
        rig.ScanFor(Duration.FromSeconds(7));
        Assert.False(rig.IsOn(load));
        Assert.Equal("it is told off: is it off?", rig.Control.ProofTestUnderWay()!.Words);
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        rig.ScanFor(Duration.FromSeconds(7));
        Assert.True(rig.IsOn(load));
        Assert.Equal("it is told on: is it on?", rig.Control.ProofTestUnderWay()!.Words);
        Assert.Equal("a proof test needs it so", rig.Why(load).Demand);

        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        Assert.Equal("passed", rig.Outcome(load).What);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void ARelayThatAPersonSawOtherwiseFails(int step)
    {
        rig.Scan(new BeginProofTest("Ada", Light));
        for (var good = 1; good < step; good++)
        {
            rig.ScanFor(Duration.FromSeconds(7));
            rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        }

        rig.ScanFor(Duration.FromSeconds(7));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: false));
        Assert.Equal(("failed", "Ada saw otherwise"), rig.Outcome(Light));
        Assert.True(rig.Test(Light).HasFailed);
    }

    [Fact]
    public void WhereNobodyAnswersNothingWasTested()
    {
        rig.Scan(new BeginProofTest("Ada", Light));
        rig.LeapFor(Duration.FromSeconds(70));
        Assert.Equal(("abandoned", "nobody said what was seen"), rig.Outcome(Light));
        Assert.False(rig.Test(Light).HasFailed);
        Assert.Null(rig.Test(Light).PassedAt);
    }

    [Theory]
    [InlineData("passed")]
    [InlineData("failed")]
    [InlineData("abandoned")]
    public void AfterATestTheLoadFollowsItsScheduleAgain(string outcome)
    {
        Assert.True(rig.IsOn("north/fan"));
        rig.Scan(new BeginProofTest("Ada", "north/fan"));
        rig.ScanFor(Duration.FromSeconds(2));
        Assert.False(rig.IsOn("north/fan"));
        rig.Scan(outcome == "abandoned" ? new AbandonProofTest("Ada") : new AnswerProofTest("Ada", outcome == "passed"));
        rig.ScanFor(Duration.FromSeconds(7));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        Assert.Equal(outcome, rig.Outcome("north/fan").What);
        rig.ScanFor(Duration.FromSeconds(7));
        Assert.True(rig.IsOn("north/fan"));
        Assert.Equal("it runs always", rig.Why("north/fan").Demand);
    }

    [Fact]
    public void APumpIsNeverSwitchedForATestButTestedInAFlood()
    {
        rig.Scan(new BeginProofTest("Ada", "north/pump"));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        rig.ScanFor(Duration.FromMinutes(5));
        Assert.DoesNotContain(rig.Events, happened => happened is { Subject: "north/pump", What: "on" });
        Assert.True(rig.Control.ProofTestUnderWay()!.WaitsForRack);
        Assert.Equal("ask for a flood: does the pump run?", rig.Control.ProofTestUnderWay()!.Words);

        rig.Scan(new FloodNow("Ada", new RackId(0)));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.False(rig.Control.ProofTestUnderWay()!.WaitsForRack);
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        Assert.Equal("passed", rig.Outcome("north/pump").What);
        Assert.True(rig.IsOn("north/pump"));
    }

    [Fact]
    public void AFloodThatDoesNotComeEndsTheTestOfThePump()
    {
        rig.Scan(new BeginProofTest("Ada", "north/pump"));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        rig.LeapFor(Duration.FromMinutes(30));
        Assert.NotNull(rig.Control.ProofTestUnderWay());
        rig.LeapFor(Duration.FromMinutes(2));
        Assert.Equal(("abandoned", "the rack was not as the test needs it"), rig.Outcome("north/pump"));
    }

    [Fact]
    public void AValveIsNotTestedWhileItsPumpRuns()
    {
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(20));
        rig.Scan(new BeginProofTest("Ada", "north/tier 1 valve"));
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.True(rig.Control.ProofTestUnderWay()!.WaitsForRack);
    }

    [Fact]
    public void AnInterlockRefusesWhatATestWouldLike()
    {
        rig.Scan(new HoldForService("Ben", new RackId(0), Duration.FromMinutes(10)));
        rig.Scan(new BeginProofTest("Ada", "north/tier 1 valve"));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        rig.LeapFor(Duration.FromMinutes(2));
        Assert.DoesNotContain(rig.Events, happened => happened is { Subject: "north/tier 1 valve", What: "on" });
        Assert.Equal(("abandoned", "the rack was not as the test needs it"), rig.Outcome("north/tier 1 valve"));
    }

    [Fact]
    public void AStoppedRackStaysInItsSafeState()
    {
        rig.Scan(new Stop("Ben", null));
        rig.Scan(new BeginProofTest("Ada", "north/aerator"));
        rig.ScanFor(Duration.FromSeconds(10));
        Assert.True(rig.IsOn("north/aerator"));
    }

    [Fact]
    public void ACurrentSensorThatSeesItsLargestLoadComeOnPasses()
    {
        rig.Set("sockets/current", 0.1);
        rig.Scan(new BeginProofTest("Ada", "sockets/current"));
        Assert.Equal(
            "with everything off that it measures, it must read below 0.20 A", rig.Control.ProofTestUnderWay()!.Words);
        rig.ScanFor(Duration.FromSeconds(4));
        Assert.DoesNotContain(rig.Site.Loads, load => rig.IsOn(load.Name));
        Assert.Equal(
            "with only north/tier 1 light on, it must read 0.40 A to 0.93 A", rig.Control.ProofTestUnderWay()!.Words);
        rig.Set("sockets/current", 0.65);
        rig.LeapUntil(() => rig.IsOn(Light));
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Equal([Light], rig.Site.Loads.Where(load => rig.IsOn(load.Name)).Select(load => load.Name));
        rig.ScanFor(Duration.FromSeconds(3));
        Assert.Equal("passed", rig.Outcome("sockets/current").What);
    }

    [Theory]
    [InlineData(0.1, 0.1)]
    [InlineData(0.1, 0.39)]
    [InlineData(0.1, 0.94)]
    [InlineData(0.21, 0.65)]
    public void ACurrentSensorThatReadsWhatCannotBeFails(double offA, double onA)
    {
        rig.Set("sockets/current", offA);
        rig.Scan(new BeginProofTest("Ada", "sockets/current"));
        rig.ScanFor(Duration.FromSeconds(4));
        rig.Set("sockets/current", onA);
        rig.LeapFor(Duration.FromMinutes(2));
        Assert.Equal("failed", rig.Outcome("sockets/current").What);
    }

    [Fact]
    public void WhileAPumpRunsNothingIsToldOff()
    {
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set("north/tier 1 full float", 1);
        var before = rig.Events.Count;
        rig.Scan(new BeginProofTest("Ada", "sockets/current"));
        rig.ScanFor(Duration.FromSeconds(70));
        Assert.True(rig.IsOn("north/pump"));
        Assert.Equal(("abandoned", "the rack was not as the test needs it"), rig.Outcome("sockets/current"));
        Assert.DoesNotContain(
            rig.Events.Skip(before), happened => happened is { Subject: "north/tier 1 valve" or "north/aerator", What: "off" });
    }

    [Fact]
    public void AFloodThatBeginsMeanwhileFindsItsValvesOpen()
    {
        rig.LeapFor(Duration.FromMinutes(16));
        rig.Scan(new BeginProofTest("Ada", "north/tier 1 valve"), new FloodNow("Ben", new RackId(0)));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(10));
        Assert.True(rig.IsOn("north/tier 1 valve"));
        Assert.True(rig.Control.ProofTestUnderWay()!.WaitsForRack);
    }

    [Fact]
    public void FromStepToStepALoadIsNotSwitchedBackAndForth()
    {
        rig.Scan(new BeginProofTest("Ada", "sockets/current"));
        rig.Set("sockets/current", 0);
        var before = rig.Events.Count;
        rig.LeapUntil(() => rig.Control.ProofTestUnderWay()!.Step == 2);
        rig.ScanFor(Duration.FromSeconds(2));
        Assert.DoesNotContain(rig.Events.Skip(before), happened => happened is { Subject: "north/aerator", What: "on" });
    }

    [Fact]
    public void OnACircuitOfPumpsACurrentSensorIsTestedByAFlood()
    {
        var site = ProofSite.Whole;
        var other = new Rig(site with
        {
            Circuits = [.. site.Circuits, site.Circuits[0] with { Id = new CircuitId(1), Name = "pump socket", SupplySense = null }],
            Loads = [.. site.Loads.Select(load => load.Kind == LoadKind.Pump ? load with { Circuit = new CircuitId(1) } : load)],
            Sensors =
            [
                .. site.Sensors.Select(
                    each => each.Kind == SensorKind.CircuitCurrent ? each with { Circuit = new CircuitId(1) } : each),
            ],
        });
        other.ScanFor(Duration.FromMinutes(3));
        other.Set("sockets/current", 0);
        other.Scan(new BeginProofTest("Ada", "sockets/current"));
        other.ScanFor(Duration.FromSeconds(5));
        other.Scan(new FloodNow("Ada", new RackId(0)));
        other.LeapUntil(() => other.IsOn("north/pump"));
        other.Set("sockets/current", 0.375);
        other.ScanFor(Duration.FromSeconds(5));
        Assert.Equal("passed", other.Outcome("sockets/current").What);
    }

    [Fact]
    public void TheSensorInThePumpsWireIsTestedByAFlood()
    {
        var like = ProofSite.Whole.Sensors[0];
        var other = new Rig(ProofSite.Whole with
        {
            Sensors =
            [
                .. ProofSite.Whole.Sensors,
                like with
                {
                    Id = new SensorId(ProofSite.Whole.Sensors.Length),
                    Name = "north/pump current",
                    Kind = SensorKind.PumpCurrent,
                    PlausibleMax = 9,
                },
            ],
        });
        other.Set("north/pump current", 0);
        other.LeapFor(Duration.FromMinutes(16));
        other.Scan(new BeginProofTest("Ada", "north/pump current"));
        other.ScanFor(Duration.FromSeconds(5));
        Assert.True(other.IsOn("north/aerator"));
        Assert.Equal(
            "with only north/pump on, in a flood, it must read 0.23 A to 0.53 A", other.Control.ProofTestUnderWay()!.Words);
        other.Scan(new FloodNow("Ada", new RackId(0)));
        other.LeapUntil(() => other.IsOn("north/pump"));
        other.Set("north/pump current", 0.375);
        other.ScanFor(Duration.FromSeconds(5));
        Assert.Equal("passed", other.Outcome("north/pump current").What);
    }

    [Theory]
    [InlineData(Light, ProofTestKind.Relay, 10)]
    [InlineData("sockets/current", ProofTestKind.CurrentSensor, 20)]
    public void EachKindHasItsInterval(string item, ProofTestKind kind, int days)
    {
        var other = new Rig(ProofSite.Whole.WithLimits(limits => limits with
        {
            RelayTestInterval = Duration.FromDays(10),
            CurrentTestInterval = Duration.FromDays(20),
        }));
        Assert.Equal((kind, Duration.FromDays(days)), (other.Test(item).Kind, other.Test(item).Interval));
    }
}
