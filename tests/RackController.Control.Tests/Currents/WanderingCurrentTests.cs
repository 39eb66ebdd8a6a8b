using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>What the changes of a circuit's current tell of its loads: when nobody switched any.</summary>
public class WanderingCurrentTests
{
    private const string Light = "north/tier 1 light";
    private const string Other = "north/tier 2 light";
    private const string Pump = "north/pump";
    private const string Fan = "north/fan";
    private const string Aerator = "north/aerator";
    private readonly BelievedCircuit circuit = new();

    [Fact]
    public void AFallForNoReasonIsThatOfEveryLoadThatDrawsSoMuchAndIsOn()
    {
        circuit.SwitchOn(Light);
        circuit.SwitchOn(Pump, 0.375);
        circuit.Wander(-0.6);
        Assert.Equal((Flow.SeemsStill, Flow.Flows, Flow.Unknown), (circuit.Of(Light).Flow, circuit.Of(Pump).Flow, circuit.Of(Other).Flow));
    }

    [Fact]
    public void ARiseForNoReasonMayBeADeadLoadThatIsAliveAgain()
    {
        circuit.Tell((Light, true));
        circuit.Judge(0, 0.142);
        Assert.Equal(Flow.Still, circuit.Of(Light).Flow);
        circuit.Wander(0.667);
        Assert.Equal(Flow.SeemsStill, circuit.Of(Light).Flow);
    }

    [Fact]
    public void ARiseForNoReasonIsThatOfTheLoadThatIsOffAndDrawsNearestToIt()
    {
        circuit.Wander(0.055);
        Assert.Equal((Flow.SeemsToFlow, Flow.Unknown), (circuit.Of("north/tier 1 valve").Flow, circuit.Of("north/tier 2 valve").Flow));
        circuit.Wander(0.36);
        Assert.Equal((Flow.SeemsToFlow, Flow.Unknown), (circuit.Of(Pump).Flow, circuit.Of(Light).Flow));
    }

    [Fact]
    public void ARiseMayUndoAFall()
    {
        circuit.SwitchOn(Light);
        circuit.Tell((Light, false));
        circuit.Judge(-0.667, 0.142);
        circuit.Wander(0.2);
        Assert.True(circuit.Of(Light).SawFall);
        circuit.Wander(0.3);
        Assert.False(circuit.Of(Light).SawFall);
    }

    /// <summary>Four times a mean scatter of 0.01 A is twice what half of an aerator draws (arithmetic).</summary>
    [Fact]
    public void ASensorThatScattersHidesSmallLoads()
    {
        circuit.Wander(double.NaN);
        Assert.True(circuit.Of(Aerator).IsSeen);
        for (var look = 0; look < 50; look++)
        {
            circuit.Wander(look % 2 == 0 ? 0.01 : -0.01);
        }

        Assert.False(circuit.Of(Aerator).IsSeen);
        Assert.True(circuit.Of(Fan).IsSeen);
        circuit.LetSettle();
        Assert.True(circuit.Of(Aerator).IsSeen);
    }

    [Fact]
    public void WhatIsNotThereDoesNotFlow()
    {
        circuit.SwitchOn(Light);
        circuit.Tell((Light, false));
        circuit.Judge(0, 0.809);
        circuit.Loads.Bound(0.4);
        Assert.Equal(Flow.Flows, circuit.Of(Light).Flow);
        circuit.Loads.Bound(0.3);
        Assert.Equal(Flow.Still, circuit.Of(Light).Flow);
    }

    [Fact]
    public void WhatIsThereWhileEverythingIsToldOffFlows()
    {
        circuit.Tell((Fan, false), (Aerator, false));
        circuit.Judge(-0.142, 0);
        circuit.Loads.Bound(0.36);
        Assert.Equal((Flow.Flows, Flow.Unknown), (circuit.Of(Pump).Flow, circuit.Of(Light).Flow));
    }

    [Fact]
    public void WhileAnythingIsToldOnACurrentProvesNothing()
    {
        circuit.Loads.Bound(0.36);
        Assert.Equal(Flow.Unknown, circuit.Of(Pump).Flow);
    }

    [Fact]
    public void OnlyWhatIsKnownOfALoadThatIsSeenAndSettledIsSaid()
    {
        circuit.SwitchOn(Light);
        circuit.Loads.Say(circuit.Facts, isKnown: true);
        Assert.Equal(Flow.Flows, circuit.Facts.FlowOf(BelievedCircuit.Site.LoadNamed(Light)));
        circuit.Loads.Say(circuit.Facts, isKnown: false);
        Assert.Equal(Flow.Unknown, circuit.Facts.FlowOf(BelievedCircuit.Site.LoadNamed(Light)));
        circuit.Tell((Light, false));
        circuit.Loads.Say(circuit.Facts, isKnown: true);
        Assert.Equal(Flow.Unknown, circuit.Facts.FlowOf(BelievedCircuit.Site.LoadNamed(Light)));
    }

    [Fact]
    public void WhileEverythingIsToldOffTooLittleForALoadIsThatOfNone()
    {
        circuit.Tell((Fan, false), (Aerator, false));
        circuit.Judge(-0.142, 0);
        circuit.Loads.Bound(0);
        circuit.Loads.Bound(0);
        Assert.All(BelievedCircuit.Site.Loads.Select(load => circuit.Of(load.Name)), load =>
            Assert.Equal((Flow.Still, true), (load.Flow, load.IsSeenAlone)));
    }

    [Fact]
    public void WhatIsToldOnIsNotStillForTooLittleCurrent()
    {
        circuit.SwitchOn(Light);
        circuit.Loads.Bound(0.1);
        Assert.Equal((Flow.Flows, false), (circuit.Of(Light).Flow, circuit.Of(Light).IsSeenAlone));
    }

    /// <summary>Half of what a pump draws by its nameplate is 0.1875 A.</summary>
    [Theory]
    [InlineData(0.1875, nameof(Flow.SeemsToFlow))]
    [InlineData(0.187, nameof(Flow.Still))]
    public void OneThatSeemsToFlowNeedsHalfOfItsCurrent(double valueA, string flow)
    {
        circuit.Wander(0.375);
        circuit.Loads.Bound(valueA);
        Assert.Equal((flow, false), (circuit.Of(Pump).Flow.ToString(), circuit.Of(Pump).IsSeenAlone));
    }

    /// <summary>Of what two lights draw the nearer counts, also where the other comes first or last.</summary>
    [Theory]
    [InlineData(0.6, 0.75, 0.62)]
    [InlineData(0.75, 0.6, 0.62)]
    public void WhatFlowsWhileAllIsOffIsThatOfTheNearestAndMayBeThatOfOneLikeIt(double firstA, double secondA, double valueA)
    {
        circuit.SwitchOn(Light, firstA);
        circuit.SwitchOn(Other, secondA);
        circuit.Tell((Light, false), (Other, false), (Fan, false), (Aerator, false));
        circuit.Judge(double.NaN, valueA);
        circuit.Loads.Bound(valueA);
        var (near, far) = firstA < secondA ? (Light, Other) : (Other, Light);
        Assert.Equal((Flow.Flows, true), (circuit.Of(near).Flow, circuit.Of(near).IsSeenAlone));
        Assert.Equal((Flow.MayFlow, false), (circuit.Of(far).Flow, circuit.Of(far).IsSeenAlone));
    }

    [Fact]
    public void OfLightsThatDrawAsMuchItIsTheOneThatWasSeenNotToStop()
    {
        circuit.SwitchOn(Light, 0.6);
        circuit.SwitchOn(Other, 0.75);
        circuit.Tell((Light, false));
        circuit.Judge(0, 1.5);
        circuit.Tell((Other, false), (Fan, false), (Aerator, false));
        circuit.Judge(-0.75, 0.75);
        circuit.Loads.Bound(0.75);
        Assert.Equal((Flow.Flows, true), (circuit.Of(Light).Flow, circuit.Of(Light).IsSeenAlone));
        Assert.Equal((Flow.MayFlow, false), (circuit.Of(Other).Flow, circuit.Of(Other).IsSeenAlone));
    }

    [Theory]
    [InlineData(0.05, 1, true)]
    [InlineData(0.4, 8, true)]
    [InlineData(0.41, 8, false)]
    [InlineData(0.05, double.NaN, false)]
    public void ATwentiethOfWhatFlowsMayBeTheSupplysOwnChange(double changeA, double fromA, bool isSway)
    {
        Assert.Equal(isSway, CircuitHearing.IsSway(changeA, fromA));
        Assert.Equal(isSway, CircuitHearing.IsSway(-changeA, fromA));
    }

    [Theory]
    [InlineData(0.2, true)]
    [InlineData(0.24, false)]
    [InlineData(-0.2, true)]
    [InlineData(-0.24, false)]
    public void WhatWasSeenWhileAllWasOffIsDoubtedOnceTheCurrentChangesByAThirdOfIt(double changeA, bool isSeenAlone)
    {
        circuit.Tell((Fan, false), (Aerator, false));
        circuit.Judge(-0.142, 0);
        circuit.Loads.Bound(0);
        circuit.Wander(changeA);
        Assert.Equal(isSeenAlone, circuit.Of(Light).IsSeenAlone);
    }

    [Fact]
    public void ALossOfWhichNobodyKnowsHowMuchIsNone()
    {
        circuit.SwitchOn(Light);
        circuit.Wander(-0.3);
        circuit.Wander(double.NaN);
        circuit.Wander(-0.3);
        Assert.Equal(0.3, circuit.Of(Light).LostA, 12);
        Assert.False(circuit.Of(Light).WasLost);
    }

    [Fact]
    public void OneThatIsToldOffLosesNothing()
    {
        circuit.Wander(-0.6);
        Assert.Equal((0, Flow.Unknown), (circuit.Of(Light).LostA, circuit.Of(Light).Flow));
    }

    [Fact]
    public void ARiseIsNotThatOfALoadThatFlowsAlready()
    {
        circuit.SwitchOn(Pump, 0.375);
        circuit.Tell((Pump, false));
        circuit.Judge(0, 0.517);
        circuit.Wander(0.375);
        Assert.Equal(Flow.Flows, circuit.Of(Pump).Flow);
    }
}
