using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>What the changes of a circuit's current tell of its loads. By their nameplates the pump draws 0.375 A, the aerator 0.042 A,
/// the fan 0.1 A, each of two lights 0.667 A and each of two valves 0.05 A; what is less than 0.019 A is not seen (arithmetic).</summary>
public class LoadBeliefsTests
{
    private const string Light = "north/tier 1 light";
    private const string Other = "north/tier 2 light";
    private const string Pump = "north/pump";
    private const string Fan = "north/fan";
    private const string Aerator = "north/aerator";
    private static readonly Site site = Sites.OneRack();
    private readonly Facts facts;
    private readonly RelayCommands commands = new(site);
    private readonly LoadBeliefs loads = new(site, site.Circuits[0]);

    public LoadBeliefsTests()
    {
        var start = new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
        var (areas, memory) = (new Areas(site), new MemoryReader(null, start));
        var calendar = new RackDemand(site, new RackId(0), memory, start, []).Clock;
        facts = new Facts(site, areas, [], new ProofTestLog(site, areas, calendar, memory, start, []), start);
        facts.AskedBy(areas.Circuits[0]);
        facts.Begin(start, ScanConditions.Good, commands);
    }

    [Fact]
    public void AtTheStartLoadsAreToldAsTheyAreAtRest()
    {
        Assert.False(loads.FollowSwitching(facts));
        Assert.False(loads.AnySwitched);
        Assert.True(loads.IsAnyTold);
        Assert.True(Of(Aerator).IsSeen);
        Tell((Fan, false), (Aerator, false));
        Assert.False(loads.IsAnyTold);
    }

    [Fact]
    public void WhatWasSwitchedToAndFroWasNot()
    {
        Tell((Light, true));
        Assert.True(loads.AnySwitched);
        Tell((Light, false));
        Assert.False(loads.AnySwitched);
    }

    [Theory]
    [InlineData(15, true)]
    [InlineData(20, false)]
    public void ASmallLoadOnALargeCircuitIsNotSeen(double breakerA, bool isSeen)
    {
        var large = site with { Circuits = [site.Circuits[0] with { BreakerA = breakerA }] };
        Assert.Equal(isSeen, LoadBeliefs.IsSeen(large, large.Loads[1]));
    }

    [Theory]
    [InlineData(0.6, nameof(Flow.Flows))]
    [InlineData(0.2, nameof(Flow.Still))]
    public void OneThatIsSwitchedOnAloneFlowsWhereTheCircuitRises(double riseA, string flow)
    {
        Tell((Light, true));
        loads.Judge(riseA, 0.14 + riseA);
        Assert.Equal(flow, Of(Light).Flow.ToString());
        Assert.False(loads.AnySwitched);
        Assert.Equal(riseA > 0.3 ? riseA : 80 / 120.0, Of(Light).DrawsA, 12);
    }

    [Fact]
    public void OneThatIsSwitchedOffAndFallsIsStill()
    {
        SwitchOn(Light);
        Tell((Light, false));
        loads.Judge(-0.667, 0.142);
        Assert.Equal((Flow.Still, true), (Of(Light).Flow, Of(Light).SawFall));
    }

    [Theory]
    [InlineData(Light, 0.667, 0.809, nameof(Flow.Flows))]
    [InlineData(Light, 0.667, 0.3, nameof(Flow.Still))]
    [InlineData(Fan, 0.1, 0.142, nameof(Flow.Still))]
    public void OneThatIsSwitchedOffAndDoesNotFallIsWeldedUnlessItIsAirOrThereIsTooLittleLeft(
        string load, double drawsA, double leftA, string flow)
    {
        SwitchOn(load, drawsA);
        Tell((load, false));
        loads.Judge(0, leftA);
        Assert.Equal((flow, false), (Of(load).Flow.ToString(), Of(load).SawFall));
    }

    [Fact]
    public void OneThatWasDeadIsNotWelded()
    {
        Tell((Light, true));
        loads.Judge(0, 0.142);
        Tell((Light, false));
        loads.Judge(0, 0.9);
        Assert.Equal(Flow.Still, Of(Light).Flow);
    }

    [Fact]
    public void OneOfWhichAsMuchWasLostBeforeIsNotWelded()
    {
        SwitchOn(Light);
        loads.Wander(-0.667);
        Assert.Equal(Flow.SeemsStill, Of(Light).Flow);
        Tell((Light, false));
        loads.Judge(0, 0.9);
        Assert.Equal(Flow.Still, Of(Light).Flow);
    }

    [Fact]
    public void WhatWasLostAndCameBackIsNotLost()
    {
        SwitchOn(Light);
        loads.Wander(-0.667);
        loads.Wander(0.667);
        LetSettle();
        Tell((Light, false));
        loads.Judge(0, 0.9);
        Assert.Equal(Flow.Flows, Of(Light).Flow);
    }

    [Fact]
    public void OfTwoThatDrawAlikeAndOfWhichOneStaysOnBothSeemTo()
    {
        SwitchOn(Light);
        SwitchOn(Other);
        Tell((Light, false), (Other, false));
        loads.Judge(-0.667, 0.809);
        Assert.Equal((Flow.SeemsToFlow, Flow.SeemsToFlow), (Of(Light).Flow, Of(Other).Flow));
    }

    [Fact]
    public void OfTwoThatDrawDifferentlyTheOneThatStaysOnStandsOut()
    {
        SwitchOn(Light);
        SwitchOn(Pump, 0.375);
        Tell((Light, false), (Pump, false));
        loads.Judge(-0.375, 0.809);
        Assert.Equal(Flow.Flows, Of(Light).Flow);
        Assert.Equal(80 / 120.0, Of(Light).DrawsA, 2);
    }

    [Fact]
    public void TwoThatAreSwitchedTogetherTeachNothingOfWhatEachDraws()
    {
        Tell((Light, true), (Pump, true));
        loads.Judge(1, 1.142);
        Assert.Equal((80 / 120.0, 45 / 120.0), (Of(Light).DrawsA, Of(Pump).DrawsA));
        Assert.Equal(Flow.Flows, Of(Light).Flow);
    }

    [Fact]
    public void AChangeThatNobodySawSaysNothing()
    {
        SwitchOn(Light);
        Tell((Light, false));
        loads.Judge(double.NaN, 0.809);
        Assert.Equal((Flow.Unknown, false), (Of(Light).Flow, loads.AnySwitched));
    }

    [Fact]
    public void WhatIsSwitchedWhileNobodyLooksIsUnknownAndWhatIsNotStaysAsItWas()
    {
        SwitchOn(Light);
        SwitchOn(Other);
        Tell((Light, false));
        loads.Judge(-0.667, 0.809);
        Tell((Other, false));
        loads.ForgetSwitched();
        Assert.Equal((Flow.Unknown, Flow.Still), (Of(Other).Flow, Of(Light).Flow));
        Assert.Equal((false, false), (loads.AnySwitched, Of(Light).SawFall));
    }

    [Fact]
    public void OneThatStopsInTheMomentInWhichAnotherIsSwitchedSeemsStill()
    {
        SwitchOn(Light);
        Tell((Pump, true));
        loads.Judge(0.375 - 0.667, 0.517);
        Assert.Equal((Flow.SeemsStill, true), (Of(Light).Flow, Of(Light).WasLost));
        Assert.Equal(Flow.Unknown, Of(Other).Flow);
    }

    [Fact]
    public void ARiseWhileAnotherIsSwitchedMayBeOneThatFellBefore()
    {
        SwitchOn(Light);
        Tell((Light, false));
        loads.Judge(-0.667, 0.142);
        Tell((Pump, true));
        loads.Judge(0.375 + 0.667, 1.184);
        Assert.False(Of(Light).SawFall);
    }

    [Fact]
    public void AFallForNoReasonIsThatOfEveryLoadThatDrawsSoMuchAndIsOn()
    {
        SwitchOn(Light);
        SwitchOn(Pump, 0.375);
        loads.Wander(-0.6);
        Assert.Equal((Flow.SeemsStill, Flow.Flows, Flow.Unknown), (Of(Light).Flow, Of(Pump).Flow, Of(Other).Flow));
    }

    [Fact]
    public void ARiseForNoReasonMayBeADeadLoadThatIsAliveAgain()
    {
        Tell((Light, true));
        loads.Judge(0, 0.142);
        Assert.Equal(Flow.Still, Of(Light).Flow);
        loads.Wander(0.667);
        Assert.Equal(Flow.SeemsStill, Of(Light).Flow);
    }

    [Fact]
    public void ARiseForNoReasonIsThatOfTheLoadThatIsOffAndDrawsNearestToIt()
    {
        loads.Wander(0.055);
        Assert.Equal((Flow.SeemsToFlow, Flow.Unknown), (Of("north/tier 1 valve").Flow, Of("north/tier 2 valve").Flow));
        loads.Wander(0.36);
        Assert.Equal((Flow.SeemsToFlow, Flow.Unknown), (Of(Pump).Flow, Of(Light).Flow));
    }

    [Fact]
    public void ARiseMayUndoAFall()
    {
        SwitchOn(Light);
        Tell((Light, false));
        loads.Judge(-0.667, 0.142);
        loads.Wander(0.2);
        Assert.True(Of(Light).SawFall);
        loads.Wander(0.3);
        Assert.False(Of(Light).SawFall);
    }

    /// <summary>Four times a mean scatter of 0.01 A is twice what half of an aerator draws (arithmetic).</summary>
    [Fact]
    public void ASensorThatScattersHidesSmallLoads()
    {
        loads.Wander(double.NaN);
        Assert.True(Of(Aerator).IsSeen);
        for (var look = 0; look < 50; look++)
        {
            loads.Wander(look % 2 == 0 ? 0.01 : -0.01);
        }

        Assert.False(Of(Aerator).IsSeen);
        Assert.True(Of(Fan).IsSeen);
        LetSettle();
        Assert.True(Of(Aerator).IsSeen);
    }

    [Fact]
    public void WhatIsNotThereDoesNotFlow()
    {
        SwitchOn(Light);
        Tell((Light, false));
        loads.Judge(0, 0.809);
        loads.Bound(0.4);
        Assert.Equal(Flow.Flows, Of(Light).Flow);
        loads.Bound(0.3);
        Assert.Equal(Flow.Still, Of(Light).Flow);
    }

    [Fact]
    public void WhatIsThereWhileEverythingIsToldOffFlows()
    {
        Tell((Fan, false), (Aerator, false));
        loads.Judge(-0.142, 0);
        loads.Bound(0.36);
        Assert.Equal((Flow.Flows, Flow.Unknown), (Of(Pump).Flow, Of(Light).Flow));
    }

    [Fact]
    public void WhileAnythingIsToldOnACurrentProvesNothing()
    {
        loads.Bound(0.36);
        Assert.Equal(Flow.Unknown, Of(Pump).Flow);
    }

    [Fact]
    public void OnlyWhatIsKnownOfALoadThatIsSeenAndSettledIsSaid()
    {
        SwitchOn(Light);
        loads.Say(facts, isKnown: true);
        Assert.Equal(Flow.Flows, facts.FlowOf(site.LoadNamed(Light)));
        loads.Say(facts, isKnown: false);
        Assert.Equal(Flow.Unknown, facts.FlowOf(site.LoadNamed(Light)));
        Tell((Light, false));
        loads.Say(facts, isKnown: true);
        Assert.Equal(Flow.Unknown, facts.FlowOf(site.LoadNamed(Light)));
    }

    private void LetSettle()
    {
        for (var look = 0; look < 50; look++)
        {
            loads.Wander(0);
        }
    }

    private LoadBelief Of(string load) => loads.Of(site.LoadNamed(load));

    private void SwitchOn(string load, double drawsA = 0.667)
    {
        Tell((load, false));
        loads.ForgetSwitched();
        Tell((load, true));
        loads.Judge(drawsA, 0.142 + drawsA);
        Assert.Equal(Flow.Flows, Of(load).Flow);
    }

    private void Tell(params (string Load, bool IsOn)[] told)
    {
        foreach (var (load, isOn) in told)
        {
            commands[site.LoadNamed(load)] = isOn ? SwitchState.On : SwitchState.Off;
        }

        facts.Begin(facts.Now, ScanConditions.Good, commands);
        loads.FollowSwitching(facts);
    }
}
