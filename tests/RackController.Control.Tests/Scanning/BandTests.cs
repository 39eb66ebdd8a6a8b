using CsCheck;

namespace RackController.Control.Tests.Scanning;

public class BandTests
{
    private static readonly Gen<double> numbers = Gen.Int[-4, 4].Select(n => n / 2.0);

    [Fact]
    public void AValueThatABandHoldsComesOutOfEveryComparisonAsTheOneBefore() =>
        Gen.Select(numbers.Array[0, 4], numbers, numbers).Sample((limits, before, after) =>
        {
            var band = Band.Everything;
            foreach (var limit in limits)
            {
                band.Narrow(limit, before > limit);
            }

            return !band.Holds(after) || limits.All(limit => after > limit == before > limit);
        });

    [Fact]
    public void ABandWithoutComparisonsHoldsAnything() => Assert.True(Band.Everything.Holds(1e300));

    [Fact]
    public void WhereTheValueItselfWasAskedForNoOtherWillDo()
    {
        var band = Band.None;
        band.Narrow(3, isAbove: false);
        band.Narrow(1, isAbove: true);
        Assert.False(band.Holds(2));
    }
}
