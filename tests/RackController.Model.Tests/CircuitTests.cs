namespace RackController.Model.Tests;

public class CircuitTests
{
    // NEC 210.20(A): a breaker is rated for at least 125 % of the continuous load, so 15 A carry 12 A and 20 A carry 16 A
    // for hours. (As quoted in a manufacturer's data bulletin on conductor ampacity.)
    [Theory]
    [InlineData(15, 12)]
    [InlineData(20, 16)]
    public void AContinuousLoadMayUseEightyPercentOfABreaker(double breakerA, double continuousA)
    {
        Assert.Equal(continuousA, breakerA * Circuit.ContinuousShare, 9);
        Assert.Equal(breakerA, continuousA * 1.25, 9);
    }
}
