using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>What a change of a circuit's current tells of one load, whose nameplate says 1 A.</summary>
public class LoadBeliefTests
{
    private readonly LoadBelief load = Of(1);

    [Fact]
    public void ItDrawsWhatItsNameplateSaysUntilItHasBeenMeasured()
    {
        Assert.Equal(1, load.DrawsA);
        load.Learn(0.8);
        Assert.Equal(0.8, load.DrawsA);
    }

    /// <summary>A third of a nameplate is the least of a load that works, 35 % above it the most (common practice, no source).</summary>
    [Theory]
    [InlineData(0.1, 1.0 / 3)]
    [InlineData(5, 1.35)]
    public void FarFromItsNameplateItIsNotBelieved(double changeA, double drawsA)
    {
        load.Learn(changeA);
        Assert.Equal(drawsA, load.DrawsA, 12);
    }

    [Fact]
    public void ItsNameplateIsDoubtedMoreThanWhatWasMeasured()
    {
        Assert.Equal(0, load.DoubtA);
        load.Switched = -1;
        Assert.Equal((-1, 0.35), (load.ExpectedA, load.DoubtA));
        load.Learn(0.8);
        Assert.Equal(-0.8, load.ExpectedA);
        Assert.Equal(0.08, load.DoubtA, 12);
    }

    [Theory]
    [InlineData(true, 0, true)]
    [InlineData(false, 0, false)]
    [InlineData(true, 1, false)]
    [InlineData(false, -1, true)]
    public void WhetherItWasOnBeforeItWasSwitchedIsKnownByHowItWasSwitched(bool isTold, int switched, bool wasTold)
    {
        (load.IsTold, load.Switched) = (isTold, switched);
        Assert.Equal(wasTold, load.WasTold);
    }

    [Theory]
    [InlineData(1, 0.5, true)]
    [InlineData(1, 0.51, false)]
    [InlineData(4, 1.9, true)]
    public void HalfOfWhatItDrawsMustShowOnItsCircuit(double drawsA, double leastA, bool isSeen) =>
        Assert.Equal(isSeen, LoadBelief.IsSeenBy(drawsA, leastA));

    [Theory]
    [InlineData(0.65, 0, true)]
    [InlineData(0.67, 0, false)]
    [InlineData(0.59, 0.4, true)]
    [InlineData(0.61, 0.4, false)]
    [InlineData(0.5, 0.5, false)]
    [InlineData(0.49, 0.5, true)]
    [InlineData(0.1, 0.51, null)]
    public void ItFollowedWhereNoMoreIsMissingThanADoubtAllows(double missingA, double doubtA, bool? followed)
    {
        Assert.Equal(followed, load.Followed(missingA, doubtA));
        Assert.Equal(followed, Of(2).Followed(2 * missingA, 2 * doubtA));
    }

    [Theory]
    [InlineData(2, 1.34, true)]
    [InlineData(2, 0.64, false)]
    [InlineData(2, 2.69, true)]
    [InlineData(2, 2.71, false)]
    [InlineData(2, 1.31, true)]
    [InlineData(2, 1.29, false)]
    [InlineData(2, -2, false)]
    [InlineData(1, 0.65, true)]
    public void AChangeIsLikeItsOwnWithinAThirdAndALittle(double drawsA, double changeA, bool isLike) =>
        Assert.Equal(isLike, Of(drawsA).IsLike(changeA));

    [Fact]
    public void OneThatIsNotSeenIsLikeNothing()
    {
        load.IsSeen = false;
        Assert.False(load.IsLike(1));
    }

    [Theory]
    [InlineData(2, 0.71, true)]
    [InlineData(2, 0.69, false)]
    [InlineData(2, 5, true)]
    [InlineData(1, 0.35, true)]
    public void ARiseMayBeItsOwnFromAThirdOfIt(double drawsA, double riseA, bool mayBe) =>
        Assert.Equal(mayBe, Of(drawsA).MayBe(riseA));

    [Fact]
    public void OfTwoTheChangeIsMoreLikeTheOneThatDrawsNearerToIt()
    {
        var other = Of(1.2);
        Assert.True(load.IsLiker(1.05, other));
        Assert.False(other.IsLiker(1.05, load));
        Assert.False(load.IsLiker(1.15, other));
        Assert.False(load.IsLiker(1, Of(1)));
    }

    [Theory]
    [InlineData(1, 0.65, true)]
    [InlineData(1, 0.64, false)]
    [InlineData(2, 1.31, true)]
    [InlineData(2, 1.29, false)]
    public void ItWasLostWhereAboutAsMuchAsItDrawsWas(double drawsA, double lostA, bool wasLost)
    {
        var own = Of(drawsA);
        own.LostA = lostA;
        Assert.Equal(wasLost, own.WasLost);
        Assert.Equal(wasLost, own.MayBePartOf(lostA));
    }

    /// <summary>Its nameplate says 2 A, and it was measured to draw 1 A: 35 % of either are 1.3 to 2.7 A and 0.65 to 1.35 A.</summary>
    [Theory]
    [InlineData(0.64, false)]
    [InlineData(0.65, true)]
    [InlineData(1.32, true)]
    [InlineData(2.69, true)]
    [InlineData(2.71, false)]
    public void WhatFlowsWhileAllIsOffIsLikeItsOwnByWhatWasMeasuredOrByItsNameplate(double valueA, bool isLike)
    {
        var own = Of(2);
        own.Learn(1);
        Assert.Equal(isLike, own.IsLikeAlone(valueA));
        own.IsSeen = false;
        Assert.False(own.IsLikeAlone(valueA));
    }

    [Theory]
    [InlineData(1.2, 0.2)]
    [InlineData(1.8, 0.1)]
    [InlineData(3, 0.5)]
    public void ItIsOffByTheLesserShareOfWhatWasMeasuredAndOfItsNameplate(double valueA, double share)
    {
        var own = Of(2);
        own.Learn(1);
        Assert.Equal(share, own.OffAlone(valueA), 12);
    }

    [Theory]
    [InlineData(true, false, nameof(Flow.Unknown), true)]
    [InlineData(false, true, nameof(Flow.Still), true)]
    [InlineData(false, true, nameof(Flow.Flows), false)]
    [InlineData(false, false, nameof(Flow.Still), false)]
    public void ItsEndWasSeenByAFallOrWhileEverythingWasOff(bool sawFall, bool isSeenAlone, string flow, bool sawEnd)
    {
        (load.SawFall, load.IsSeenAlone, load.Flow) = (sawFall, isSeenAlone, Enum.Parse<Flow>(flow));
        Assert.Equal(sawEnd, load.SawEnd);
    }

    private static LoadBelief Of(double nameplateA) => new(Sites.OneRack().Loads[0], nameplateA) { IsSeen = true };
}
