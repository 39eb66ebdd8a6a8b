using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class FloodTimingsTests
{
    private static readonly FloodTimings timings = new(FittedSite.Site, FittedSite.Rack);
    private static readonly FloodRecord flood = FittedSite.Floods(1, [1, 1], [1, 1]).Single();

    [Fact]
    public void AFloodIsTimedAtTheHeightOfItsFloatsWithThePumpsRunAndTheLevelBefore()
    {
        var timed = Assert.Single(timings.Of([flood with { ReservoirMm = 321 }]));

        var local = flood.At.InZone(FittedSite.Site.Zone).LocalDateTime;
        Assert.Equal($"the flood of {local:uuuu-MM-dd HH:mm}", timed.Name);
        Assert.Equal(new FloodRun(flood.Fill!.Value + flood.Soak!.Value, 321), timed.Run);
        Assert.Equal(
            [(1, FloodPassing.Rising), (1, FloodPassing.Falling), (2, FloodPassing.Rising), (2, FloodPassing.Falling)],
            timed.Times.Select(time => (time.Mark.TierNumber, time.Mark.Passing)));
        Assert.All(timed.Times, time => Assert.Equal(40, time.Mark.DepthMm));
        Assert.Equal(flood.Tiers[0].FullAfter!.Value.TotalSeconds, timed.Times[0].AfterS);
    }

    [Fact]
    public void WithoutALevelTheReservoirIsTakenToHaveBeenFull()
    {
        var tank = FittedSite.Rack.Reservoir;
        Assert.Equal(tank.NormalVolumeL / tank.AreaM2, timings.Of([flood])[0].Run.ReservoirMm);
    }

    [Fact]
    public void WhereValvesTellTheFloodIsOfTheTiersThatTookPart()
    {
        var valved = FittedSite.Site.WithRack(rack => rack with
        {
            Tiers = [.. rack.Tiers.Select(tier => tier with { Valve = new LoadId(0), InUse = false })],
        });
        var of = new FloodTimings(valved, valved.Racks[0]);

        var timed = Assert.Single(of.Of([flood with { Resting = TierSet.Of([1]) }, flood with { Resting = null }]));

        Assert.Equal(TierSet.Of([1]), timed.Run.Resting);
        Assert.Equal([2], timed.Times.Select(time => time.Mark.TierNumber).Distinct());
    }

    [Fact]
    public void AFloodThatWasCutShortOrThatNothingTimedIsNotCompared() =>
        Assert.Empty(timings.Of([flood with { Soak = null, CutShort = "the pump was told off" }, flood with { Tiers = [] }]));
}
