using NodaTime;

namespace RackController.Control.Tests.Currents;

/// <summary>What stops without being switched, and what is made of that.</summary>
public sealed class LoadSuspicionsTests
{
    private const string Light = "north/tier 1 light";
    private const string Other = "north/tier 2 light";
    private const string Pump = "north/pump";
    private const string Fan = "north/fan";
    private const string Aerator = "north/aerator";
    private readonly BelievedCircuit believed = new();

    [Theory]
    [InlineData(45)]
    [InlineData(60)]
    public void TwoLightsThatDieInOneMomentAreToldOfAlsoWhenAFloodBeginsThen(int minutes)
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/tier 2 light"));
        circuit.Rig.LeapFor(Duration.FromMinutes(minutes));
        circuit.Draws(Light, 0);
        circuit.Draws("north/tier 2 light", 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        Assert.NotNull(circuit.Rig.Alarm("north/tier 1 light/dead-load"));
        Assert.NotNull(circuit.Rig.Alarm("north/tier 2 light/dead-load"));
        Assert.Null(circuit.Rig.Alarm("north/aerator/dead-air"));
    }

    [Fact]
    public void ALightThatDiesInTheMomentInWhichThePumpIsSwitchedIsFoundByACheck()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/pump"));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Draws(Light, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm("north/tier 1 light/dead-load")!.State);
        Assert.Null(circuit.Rig.Alarm("north/tier 2 light/dead-load"));
        Assert.Null(circuit.Rig.Alarm("north/tier 1 light/relay-welded"));
    }

    [Fact]
    public void MoreThanAnyOneDrawsThatIsGoneMakesAllSuspectThatAreOnAndDrawLess()
    {
        believed.SwitchOn(Light);
        believed.SwitchOn(Other);
        believed.Wander(-1.333);
        Assert.Equal((Flow.SeemsStill, Flow.SeemsStill), (FlowOf(Light), FlowOf(Other)));
        Assert.Equal((Flow.SeemsStill, Flow.Unknown), (FlowOf(Fan), FlowOf(Pump)));

        // After such a leap it is not told apart any more.
        Assert.Equal((Flow.Unknown, false), (FlowOf(Aerator), believed.Of(Aerator).IsSeen));
    }

    [Fact]
    public void OneThatDrawsMoreThanIsGoneIsNotSuspect()
    {
        believed.SwitchOn(Light);
        believed.Wander(-0.2);
        Assert.Equal((Flow.Flows, Flow.SeemsStill), (FlowOf(Light), FlowOf(Fan)));
    }

    [Fact]
    public void OneThatIsKnownToBeStillIsNotSuspect()
    {
        believed.Tell((Light, true));
        believed.Judge(0, 0.142);
        believed.Wander(-0.95);
        Assert.Equal((Flow.Still, Flow.SeemsStill), (FlowOf(Light), FlowOf(Fan)));
    }

    [Fact]
    public void AnUnexplainedRiseMakesNobodySeemStill()
    {
        believed.SwitchOn(Light);
        believed.Wander(2);
        Assert.Equal((Flow.Flows, Flow.Unknown), (FlowOf(Light), FlowOf(Aerator)));
    }

    /// <summary>Of a fan that draws 0.1 A up to 0.135 A may be missing; an aerator, of 0.042 A, would explain 0.056 A.</summary>
    [Theory]
    [InlineData(0.13, nameof(Flow.Unknown))]
    [InlineData(0.14, nameof(Flow.SeemsStill))]
    public void MoreThanWhatWasSwitchedDrawsThatIsMissingMakesOthersSuspect(double missingA, string aerator)
    {
        believed.Tell((Fan, false));
        believed.Judge(-0.1 - missingA, 0.5);
        Assert.Equal(aerator, FlowOf(Aerator).ToString());
    }

    [Fact]
    public void WhereOneOfThoseThatAreOnExplainsWhatIsMissingNoOtherIsSuspect()
    {
        believed.SwitchOn(Light);
        believed.Tell((Fan, false));
        believed.Judge(-0.1 - 0.667, 0.042);
        Assert.Equal((Flow.SeemsStill, Flow.Unknown), (FlowOf(Light), FlowOf(Aerator)));
    }

    [Fact]
    public void OneThatIsKnownToBeStillExplainsNothingThatIsMissing()
    {
        believed.Tell((Light, true));
        believed.Judge(0, 0.142);
        believed.Tell((Pump, true));
        believed.Judge(0.375 - 0.667, 0);
        Assert.Equal((Flow.Still, 0, Flow.SeemsStill), (FlowOf(Light), believed.Of(Light).LostA, FlowOf(Aerator)));
    }

    [Theory]
    [InlineData(0.2, true)]
    [InlineData(0.3, false)]
    [InlineData(-0.3, false)]
    public void WhatWasSeenWhileAllWasOffIsDoubtedOnceAThirdOfItIsMissingOrTooMuch(double missingA, bool isSeenAlone)
    {
        AllOff();
        believed.Tell((Pump, true));
        believed.Judge(0.375 - missingA, 0.375 - missingA);
        Assert.Equal(isSeenAlone, believed.Of(Light).IsSeenAlone);
    }

    [Theory]
    [InlineData(0.375, nameof(Flow.SeemsToFlow))]
    [InlineData(0.6, nameof(Flow.Still))]
    public void ARiseThatAnotherDoesNotExplainIsThatOfAPumpAtRestThatDrawsAsMuchAndOfNothingElse(double riseA, string pump)
    {
        AllOff();
        believed.Tell((Fan, true));
        believed.Loads.Judge(changeA: 0.1, valueA: 0.1 + riseA, sinceSettledA: 0.1 + riseA);
        Assert.Equal((pump, Flow.Still), (FlowOf(Pump).ToString(), FlowOf(Light)));
    }

    [Fact]
    public void APumpThatIsToldOnOrKnownToFlowIsNotSuspectedOfARise()
    {
        believed.SwitchOn(Pump, 0.375);
        believed.Tell((Light, true));
        believed.Loads.Judge(changeA: 0.667, valueA: 1.559, sinceSettledA: 0.667 + 0.375);
        Assert.Equal(Flow.Flows, FlowOf(Pump));

        believed.Tell((Pump, false));
        believed.Judge(0, 1.559);
        believed.Tell((Light, false));
        believed.Loads.Judge(changeA: -0.667, valueA: 0.892, sinceSettledA: 0.375 - 0.667);
        Assert.Equal(Flow.Flows, FlowOf(Pump));
    }

    private Flow FlowOf(string load) => believed.Of(load).Flow;

    private void AllOff()
    {
        believed.Tell((Fan, false), (Aerator, false));
        believed.Judge(-0.142, 0);
        believed.Loads.Bound(0);
    }
}
