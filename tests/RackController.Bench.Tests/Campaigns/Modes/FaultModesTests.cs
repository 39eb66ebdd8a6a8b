using NodaTime;
using RackController.Plant;

namespace RackController.Bench.Tests.Campaigns.Modes;

public sealed class FaultModesTests
{
    private const int AtLeast = 60;

    [Fact]
    public void ThereAreAtLeastSixtyModesAndEachHasAnIdOfItsOwn()
    {
        Assert.True(FaultModes.All.Length >= AtLeast, $"{FaultModes.All.Length} modes");
        Assert.Equal(FaultModes.All.Length, FaultModes.All.Select(mode => mode.Id).Distinct().Count());
    }

    [Fact]
    public void EveryModeSaysWhereSuchPartsAreKnownToFailSo() => Assert.All(FaultModes.All, mode =>
        Assert.Matches(@"from memory|no source|issues? \d|\.(com|org|net)|Sht3x|libgpiod|\d{4,}", mode.Source));

    [Fact]
    public void SizesLieWithinWhatTheSimulatedRackTakes() => Assert.All(
        from mode in FaultModes.All
        from kind in mode.Kinds
        select (mode, FaultCatalogue.Entry(kind)),
        at =>
        {
            var (mode, entry) = at;
            Assert.Equal(entry.SizeUnit.Length > 0, mode.Sizes is not null);
            if (mode.Sizes is { } sizes)
            {
                Assert.InRange(sizes.Plain, sizes.Least, sizes.Most);
                Assert.InRange(sizes.Least, entry.SizeMin, entry.SizeMax);
                Assert.InRange(sizes.Most, entry.SizeMin, entry.SizeMax);
            }
        });

    [Fact]
    public void AModeLastsFromItsShortestToItsLongest() => Assert.All(FaultModes.All, mode =>
    {
        Assert.True(mode.ShortestLasts <= mode.LongestLasts, mode.Id);
        Assert.True(mode.LongestLasts <= Duration.FromDays(1), mode.Id);
    });

    [Fact]
    public void EveryKindOfFaultThatIsNotARepairHasItsMode()
    {
        FaultKind[] deedsOfPeople =
            [
                FaultKind.ReservoirRefilled, FaultKind.FloorMopped, FaultKind.BreakerClosed, FaultKind.FloatCutoutReset,
                FaultKind.FloatCutoutLifted, FaultKind.MovedWet, FaultKind.MovedDry,
            ];
        var played = FaultModes.All.SelectMany(mode => mode.Kinds).ToHashSet();
        Assert.Empty(Enum.GetValues<FaultKind>().Except(played).Except(deedsOfPeople));
    }
}
