namespace RackController.Model.Tests;

public sealed class TierSetTests
{
    [Fact]
    public void TheSameTiersAreTheSameSetInWhateverOrderTheyWereNamed()
    {
        Assert.Equal(TierSet.Of([1, 3, 63]), TierSet.Of([63, 3, 1, 3]));
        Assert.NotEqual(TierSet.Of([1, 3]), TierSet.Of([1, 2]));
        Assert.Equal([1, 3, 63], TierSet.Of([63, 1, 3]).Numbers);
    }

    [Fact]
    public void ItHasWhatWasPutIntoItAndNothingElse()
    {
        var set = TierSet.Of([2, 12]);

        Assert.True(set.Contains(2) && set.Contains(12));
        Assert.False(set.Contains(1) || set.Contains(3) || set.IsEmpty);
        Assert.True(TierSet.None.IsEmpty);
    }
}
