namespace RackController.Plant.Tests;

public class BallValveTests
{
    /// <summary>Open, a third and two thirds closed: 0.05, 5.5 and 200 (slideplayer.com/amp/8745401).</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.05, 0)]
    [InlineData(5.5, 30)]
    [InlineData(200, 60)]
    public void ItsTurnFollowsThePublishedLosses(double minorLossK, double degrees) =>
        Assert.Equal(degrees, BallValve.ClosedDegrees(minorLossK), 1e-9);

    [Fact]
    public void MoreLossIsMoreTurnAndNeverQuiteShut()
    {
        var turns = Enumerable.Range(0, 60).Select(step => BallValve.ClosedDegrees(0.01 * Math.Pow(1.5, step))).ToList();

        Assert.Equal(turns.Order(), turns);
        Assert.Equal(85, turns[^1]);
    }
}
