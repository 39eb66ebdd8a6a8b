namespace RackController.Control.Tests.Currents;

/// <summary>What the changes of a circuit's current tell of its loads: when some were switched.</summary>
public class LoadBeliefsTests
{
    private const string Light = "north/tier 1 light";
    private const string Other = "north/tier 2 light";
    private const string Pump = "north/pump";
    private const string Fan = "north/fan";
    private const string Aerator = "north/aerator";
    private const string Valve = "north/tier 1 valve";
    private readonly BelievedCircuit circuit = new();

    [Fact]
    public void AtTheStartLoadsAreToldAsTheyAreAtRest()
    {
        Assert.False(circuit.Loads.FollowSwitching(circuit.Facts));
        Assert.False(circuit.Loads.AnySwitched);
        Assert.True(circuit.Loads.IsAnyTold);
        Assert.True(circuit.Of(Aerator).IsSeen);
        circuit.Tell((Fan, false), (Aerator, false));
        Assert.False(circuit.Loads.IsAnyTold);
    }

    [Fact]
    public void WhatWasSwitchedToAndFroWasNot()
    {
        circuit.Tell((Light, true));
        Assert.True(circuit.Loads.AnySwitched);
        circuit.Tell((Light, false));
        Assert.False(circuit.Loads.AnySwitched);
    }

    [Theory]
    [InlineData(15, true)]
    [InlineData(20, false)]
    public void ASmallLoadOnALargeCircuitIsNotSeen(double breakerA, bool isSeen)
    {
        var site = BelievedCircuit.Site;
        var large = site with { Circuits = [site.Circuits[0] with { BreakerA = breakerA }] };
        Assert.Equal(isSeen, LoadBeliefs.IsSeen(large, large.Loads[1]));
    }

    [Theory]
    [InlineData(0.6, nameof(Flow.Flows))]
    [InlineData(0.2, nameof(Flow.Still))]
    public void OneThatIsSwitchedOnAloneFlowsWhereTheCircuitRises(double riseA, string flow)
    {
        circuit.Tell((Light, true));
        circuit.Judge(riseA, 0.14 + riseA);
        Assert.Equal(flow, circuit.Of(Light).Flow.ToString());
        Assert.False(circuit.Loads.AnySwitched);
        Assert.Equal(riseA > 0.3 ? riseA : 80 / 120.0, circuit.Of(Light).DrawsA, 12);
    }

    [Fact]
    public void OneThatIsSwitchedOffAndFallsIsStill()
    {
        circuit.SwitchOn(Light);
        circuit.Tell((Light, false));
        circuit.Judge(-0.667, 0.142);
        Assert.Equal((Flow.Still, true), (circuit.Of(Light).Flow, circuit.Of(Light).SawFall));
    }

    [Theory]
    [InlineData(Light, 0.667, 0.809, nameof(Flow.Flows))]
    [InlineData(Light, 0.667, 0.3, nameof(Flow.Still))]
    [InlineData(Light, 0.75, 0.375, nameof(Flow.Flows))]
    [InlineData(Fan, 0.1, 0.142, nameof(Flow.Still))]
    public void OneThatIsSwitchedOffAndDoesNotFallIsWeldedUnlessItIsAirOrThereIsTooLittleLeft(
        string load, double drawsA, double leftA, string flow)
    {
        circuit.SwitchOn(load, drawsA);
        circuit.Tell((load, false));
        circuit.Judge(0, leftA);
        Assert.Equal((flow, false), (circuit.Of(load).Flow.ToString(), circuit.Of(load).SawFall));
    }

    [Fact]
    public void OneThatWasDeadIsNotWelded()
    {
        circuit.Tell((Light, true));
        circuit.Judge(0, 0.142);
        circuit.Tell((Light, false));
        circuit.Judge(0, 0.9);
        Assert.Equal(Flow.Still, circuit.Of(Light).Flow);
    }

    [Fact]
    public void OneOfWhichAsMuchWasLostBeforeIsNotWelded()
    {
        circuit.SwitchOn(Light);
        circuit.Wander(-0.667);
        Assert.Equal(Flow.SeemsStill, circuit.Of(Light).Flow);
        circuit.Tell((Light, false));
        circuit.Judge(0, 0.9);
        Assert.Equal(Flow.Still, circuit.Of(Light).Flow);
    }

    [Fact]
    public void WhatWasLostAndCameBackIsNotLost()
    {
        circuit.SwitchOn(Light);
        circuit.Wander(-0.667);
        circuit.Wander(0.667);
        circuit.LetSettle();
        circuit.Tell((Light, false));
        circuit.Judge(0, 0.9);
        Assert.Equal(Flow.Flows, circuit.Of(Light).Flow);
    }

    [Fact]
    public void OfTwoThatDrawAlikeAndOfWhichOneStaysOnBothSeemTo()
    {
        circuit.SwitchOn(Light);
        circuit.SwitchOn(Other);
        circuit.Tell((Light, false), (Other, false));
        circuit.Judge(-0.667, 0.809);
        Assert.Equal((Flow.SeemsToFlow, Flow.SeemsToFlow), (circuit.Of(Light).Flow, circuit.Of(Other).Flow));
    }

    [Fact]
    public void OfTwoThatDrawDifferentlyTheOneThatStaysOnStandsOut()
    {
        circuit.SwitchOn(Light);
        circuit.SwitchOn(Pump, 0.375);
        circuit.Tell((Light, false), (Pump, false));
        circuit.Judge(-0.375, 0.809);
        Assert.Equal(Flow.Flows, circuit.Of(Light).Flow);
        Assert.Equal(80 / 120.0, circuit.Of(Light).DrawsA, 2);
    }

    [Fact]
    public void TwoThatAreSwitchedTogetherTeachNothingOfWhatEachDraws()
    {
        circuit.Tell((Light, true), (Pump, true));
        circuit.Judge(1, 1.142);
        Assert.Equal((80 / 120.0, 45 / 120.0), (circuit.Of(Light).DrawsA, circuit.Of(Pump).DrawsA));
        Assert.Equal(Flow.Flows, circuit.Of(Light).Flow);
    }

    [Fact]
    public void AChangeThatNobodySawSaysNothing()
    {
        circuit.SwitchOn(Light);
        circuit.Tell((Light, false));
        circuit.Judge(double.NaN, 0.809);
        Assert.Equal((Flow.Unknown, false), (circuit.Of(Light).Flow, circuit.Loads.AnySwitched));
    }

    [Fact]
    public void WhatIsSwitchedWhileNobodyLooksIsUnknownAndWhatIsNotStaysAsItWas()
    {
        circuit.SwitchOn(Light);
        circuit.SwitchOn(Other);
        circuit.Tell((Light, false));
        circuit.Judge(-0.667, 0.809);
        circuit.Tell((Other, false));
        circuit.Loads.ForgetSwitched();
        Assert.Equal((Flow.Unknown, Flow.Still), (circuit.Of(Other).Flow, circuit.Of(Light).Flow));
        Assert.Equal((false, false), (circuit.Loads.AnySwitched, circuit.Of(Light).SawFall));
    }

    [Fact]
    public void OneThatStopsInTheMomentInWhichAnotherIsSwitchedSeemsStill()
    {
        circuit.SwitchOn(Light);
        circuit.Tell((Pump, true));
        circuit.Judge(0.375 - 0.667, 0.517);
        Assert.Equal((Flow.SeemsStill, true), (circuit.Of(Light).Flow, circuit.Of(Light).WasLost));
        Assert.Equal(Flow.Unknown, circuit.Of(Other).Flow);
    }

    [Fact]
    public void ARiseWhileAnotherIsSwitchedMayBeOneThatFellBefore()
    {
        circuit.SwitchOn(Light);
        circuit.Tell((Light, false));
        circuit.Judge(-0.667, 0.142);
        circuit.Tell((Pump, true));
        circuit.Judge(0.375 + 0.667, 1.184);
        Assert.False(circuit.Of(Light).SawFall);
    }

    /// <summary>The nameplate of a light is doubted by 0.23 A, which is more than half of a pump's 0.375 A; what was measured by 0.07 A.
    /// </summary>
    [Fact]
    public void OneThatIsSwitchedWithALargerOneIsJudgedOnceThatWasMeasured()
    {
        circuit.Tell((Light, true), (Pump, true));
        circuit.Judge(0.667, 0.809);
        Assert.Equal(Flow.Unknown, circuit.Of(Pump).Flow);

        circuit.SwitchOn(Light);
        circuit.Tell((Light, false), (Pump, false));
        circuit.Loads.ForgetSwitched();
        circuit.Tell((Light, true), (Pump, true));
        circuit.Judge(0.667, 0.809);
        Assert.Equal((Flow.Flows, Flow.Still), (circuit.Of(Light).Flow, circuit.Of(Pump).Flow));
    }

    [Fact]
    public void OneThatProvesToDrawTooLittleIsNotSeenAnyMore()
    {
        Assert.True(circuit.Of(Valve).IsSeen);
        circuit.Tell((Valve, true));
        circuit.Judge(0.03, 0.172);
        Assert.Equal((0.03, false), (Math.Round(circuit.Of(Valve).DrawsA, 6), circuit.Of(Valve).IsSeen));
    }

    [Fact]
    public void OneThatDrewCurrentThoughToldOffDoesSoStillWhenItIsToldOn()
    {
        circuit.Wander(0.375);
        Assert.Equal(Flow.SeemsToFlow, circuit.Of(Pump).Flow);
        circuit.Tell((Pump, true));
        circuit.Judge(0, 0.517);
        Assert.Equal(Flow.Flows, circuit.Of(Pump).Flow);
        circuit.Tell((Pump, false));
        circuit.Judge(0, 0.517);
        circuit.Tell((Pump, true));
        circuit.Judge(0, 0.517);
        Assert.Equal(Flow.Flows, circuit.Of(Pump).Flow);
    }

    [Fact]
    public void WhatWasLostIsForgottenWhenItIsSwitchedAnew()
    {
        circuit.SwitchOn(Light);
        circuit.Wander(-0.667);
        circuit.LetSettle();
        circuit.Tell((Light, false));
        circuit.Judge(0, 0.142);
        Assert.Equal((0, Flow.Still), (circuit.Of(Light).LostA, circuit.Of(Light).Flow));
        circuit.Tell((Light, true));
        circuit.Judge(0.667, 0.809);
        circuit.Tell((Light, false));
        circuit.Judge(0, 0.809);
        Assert.Equal(Flow.Flows, circuit.Of(Light).Flow);
    }

    [Fact]
    public void OneThatIsSwitchedOnHasShownNoEnd()
    {
        circuit.SwitchOn(Light);
        Assert.False(circuit.Of(Light).SawFall);
    }

    [Fact]
    public void WhatWasSeenWhileAllWasOffIsSeenNoMoreOnceItIsSwitchedOrNobodyLooks()
    {
        SwitchAllOff();
        Assert.True(circuit.Of(Light).IsSeenAlone);
        circuit.Tell((Light, true));
        circuit.Judge(0.667, 0.667);
        Assert.Equal((false, true), (circuit.Of(Light).IsSeenAlone, circuit.Of(Other).IsSeenAlone));
        circuit.Loads.ForgetSwitched();
        Assert.Equal((false, Flow.Still), (circuit.Of(Other).IsSeenAlone, circuit.Of(Other).Flow));
    }

    /// <summary>Fan and aerator draw 0.142 A together, of which more than 0.075 A has to be heard.</summary>
    [Fact]
    public void ASensorThatSaysTheSameThoughEverythingIsSwitchedOffBlamesNobody()
    {
        SwitchAllOff();
        circuit.Tell((Fan, true), (Aerator, true));
        circuit.Judge(0.142, 0.142);
        Assert.Equal((Flow.Still, true), (circuit.Of(Light).Flow, circuit.Of(Light).IsSeenAlone));

        // Just before, it had risen for a moment, as when a pump starts.
        circuit.Tell((Fan, false), (Aerator, false));
        circuit.Loads.Judge(changeA: 0, valueA: 0.342, sinceSettledA: 0.2);
        Assert.Equal((true, false), (circuit.Loads.IsDeaf, circuit.Loads.AnySwitched));
        circuit.Loads.Bound(0.375);
        circuit.Loads.Bound(0);
        Assert.All(BelievedCircuit.Site.Loads.Select(load => circuit.Of(load.Name)), load =>
            Assert.Equal((Flow.Unknown, false, false), (load.Flow, load.IsSeenAlone, load.SawFall)));

        circuit.Wander(0.1);
        circuit.Loads.Bound(0.375);
        Assert.Equal(Flow.Flows, circuit.Of(Pump).Flow);
    }

    private void SwitchAllOff()
    {
        circuit.Tell((Fan, false), (Aerator, false));
        circuit.Judge(-0.142, 0);
        circuit.Loads.Bound(0);
    }
}
