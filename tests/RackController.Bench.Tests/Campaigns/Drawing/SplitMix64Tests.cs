namespace RackController.Bench.Tests.Campaigns.Drawing;

public sealed class SplitMix64Tests
{
    [Fact]
    public void ItsSequenceIsThePublishedOne()
    {
        // First three numbers of SplitMix64 from the seed 1234567, as in the tests of many libraries (from memory).
        var chance = new SplitMix64(1234567);
        Assert.Equal([6457827717110365317UL, 3203168211198807973UL, 9817491932198370423UL], [chance.Next(), chance.Next(), chance.Next()]);
    }

    [Fact]
    public void ANameDrawsTheSameWhateverElseIsDrawn()
    {
        Assert.Equal(SplitMix64.Of(7, "leak rope dead").Next(), SplitMix64.Of(7, "leak rope dead").Next());
        Assert.NotEqual(SplitMix64.Of(7, "leak rope dead").Next(), SplitMix64.Of(8, "leak rope dead").Next());
        Assert.NotEqual(SplitMix64.Of(7, "leak rope dead").Next(), SplitMix64.Of(7, "leak rope slow").Next());
    }

    [Fact]
    public void NumbersStayWithinTheirBounds()
    {
        var chance = new SplitMix64(3);
        for (var i = 0; i < 1000; i++)
        {
            Assert.InRange(chance.Share(), 0, 1);
            Assert.InRange(chance.Below(7), 0, 6);
            Assert.InRange(chance.BetweenByDoublings(0.5, 8), 0.5, 8);
        }
    }
}
