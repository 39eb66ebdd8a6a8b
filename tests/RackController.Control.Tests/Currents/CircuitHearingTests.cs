using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>What the sensor of a circuit hears whose breaker trips at 16 A: of that no less than an eight-hundredth, 0.02 A.</summary>
public class CircuitHearingTests
{
    private const double LeastA = 0.02;
    private readonly CircuitHearing hearing = new(Sites.OneRack().Circuits[0] with { BreakerA = 16 });

    [Fact]
    public void ASensorThatDoesNotScatterTellsAnEightHundredthOfItsBreaker() => Assert.Equal(LeastA, hearing.LeastA, 12);

    [Theory]
    [InlineData(2 * LeastA, true)]
    [InlineData(-2 * LeastA, true)]
    [InlineData(1.99 * LeastA, false)]
    [InlineData(double.NaN, false)]
    public void TwiceWhatIsToldIsHeardBeyondDoubt(double changeA, bool isHeard) => Assert.Equal(isHeard, hearing.IsHeard(changeA));

    /// <summary>Of a mean scatter of 0.01 A four times as much is told (arithmetic).</summary>
    [Fact]
    public void TheMoreItScattersTheLessItHearsUntilItIsQuietAgain()
    {
        Wander(0.01);
        Assert.Equal(0.04, hearing.LeastA, 4);
        Assert.False(hearing.IsHeard(0.079));
        hearing.Wander(double.NaN);
        Assert.Equal(0.04, hearing.LeastA, 4);
        Wander(0);
        Assert.Equal(LeastA, hearing.LeastA, 12);
    }

    /// <summary>A leap counts for four times the least that is told, 0.08 A, of which a tenth is believed: 0.008 A.</summary>
    [Fact]
    public void ASingleLeapIsNoScatter()
    {
        hearing.Wander(5);
        Assert.Equal(0.032, hearing.LeastA, 12);
    }

    [Theory]
    [InlineData(0, -4 * LeastA, true, true)]
    [InlineData(-0.9 * LeastA, -1, true, true)]
    [InlineData(0, -3.9 * LeastA, true, false)]
    [InlineData(0, -1, false, false)]
    [InlineData(double.NaN, -1, true, false)]
    [InlineData(-1.1 * LeastA, -1, true, false)]
    public void ASensorThatDoesNotFollowWhenMuchIsSwitchedOffAndNothingLeftOnIsDeaf(
        double changeA, double expectedA, bool isAllOff, bool isDeaf)
    {
        hearing.Follow(changeA, expectedA, isAllOff);
        Assert.Equal(isDeaf, hearing.IsDeaf);
    }

    [Theory]
    [InlineData(2 * LeastA, false)]
    [InlineData(1.9 * LeastA, true)]
    [InlineData(double.NaN, true)]
    public void ADeafSensorHearsAgainOnceItSaysSomethingElse(double changeA, bool isDeaf)
    {
        hearing.Follow(0, -1, isAllOff: true);
        hearing.Wander(changeA);
        Assert.Equal(isDeaf, hearing.IsDeaf);
    }

    [Theory]
    [InlineData(2 * LeastA, false)]
    [InlineData(0, true)]
    public void ADeafSensorHearsAgainOnceItFollowsASwitching(double changeA, bool isDeaf)
    {
        hearing.Follow(0, -1, isAllOff: true);
        hearing.Follow(changeA, 1, isAllOff: false);
        Assert.Equal(isDeaf, hearing.IsDeaf);
    }

    [Fact]
    public void ASensorThatSaysTheVerySameIsDeafHoweverMuchItScatteredBefore()
    {
        hearing.Wander(3);
        hearing.Wander(-3);
        hearing.Wander(3);
        hearing.Follow(0, -0.19, isAllOff: true);
        Assert.True(hearing.IsDeaf);
    }

    private void Wander(double byA)
    {
        for (var look = 0; look < 100; look++)
        {
            hearing.Wander(look % 2 == 0 ? byA : -byA);
        }
    }
}
