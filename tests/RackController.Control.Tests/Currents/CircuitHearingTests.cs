using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>What the sensor of a circuit of 15 A can be heard to tell: 0.019 A at best.</summary>
public sealed class CircuitHearingTests
{
    private readonly CircuitHearing hearing = new(Sites.OneRack().Circuits[0]);

    [Fact]
    public void ASingleLeapHidesNoSmallLoad()
    {
        hearing.Wander(2.2);
        Assert.InRange(hearing.LeastA, 0.018, 0.035);
    }

    [Fact]
    public void NoiseIsLearntWithinAMinuteOfLooks()
    {
        for (var look = 0; look < 6; look++)
        {
            hearing.Wander(look % 2 == 0 ? 0.3 : -0.3);
        }

        Assert.InRange(hearing.LeastA, 0.3, 1.2);
    }

    [Fact]
    public void ASensorThatSaysTheVerySameAsBeforeAllWasOffIsDeafHoweverMuchItScatteredBefore()
    {
        hearing.Wander(3);
        hearing.Wander(-3);
        hearing.Wander(3);
        hearing.Follow(changeA: 0, expectedA: -0.19, isAllOff: true);
        Assert.True(hearing.IsDeaf);
    }

    [Theory]
    [InlineData(0, -0.07, true)]
    [InlineData(0, -0.19, false)]
    [InlineData(-0.02, -0.19, true)]
    [InlineData(double.NaN, -0.19, true)]
    public void ItIsNotDeafWhereLittleWasMeantOrSomeIsLeftOnOrAnythingChanged(double changeA, double expectedA, bool isAllOff)
    {
        hearing.Follow(changeA, expectedA, isAllOff);
        Assert.False(hearing.IsDeaf);
    }

    [Fact]
    public void WhatHeardNothingHearsAgainOnceItSaysSomethingElse()
    {
        hearing.Follow(changeA: 0, expectedA: -0.19, isAllOff: true);
        hearing.Wander(0.03);
        Assert.True(hearing.IsDeaf);
        hearing.Wander(0.2);
        Assert.False(hearing.IsDeaf);
    }
}
