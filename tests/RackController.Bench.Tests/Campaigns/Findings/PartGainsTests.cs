using RackController.Bench.Tests.Support;

namespace RackController.Bench.Tests.Campaigns.Findings;

public sealed class PartGainsTests
{
    private static readonly PartGains dry = PartGains.Of(
        SurveyedRacks.Site(2, "{ flow: 25 L/min, head: 2 m }", "drip-tray: 50 L\n    aerator: { power: 5 W }"));

    private static readonly PartGains bare = PartGains.Of(SurveyedRacks.Site(2, "{ flow: 25 L/min, head: 2 m }"));

    [Fact]
    public void AWeldedPumpIsCutOffByAContactorOrATimeRelayAndByNothingLess()
    {
        Assert.Equal(1, dry.Hazards);
        Assert.Equal(
            ["sockets, contactor upstream, and the current of its pumps", "north, time relay in the pump's own wire"],
            dry.Gains.Where(gain => gain.Cuts > 0).Select(gain => gain.Part.What));
    }

    [Fact]
    public void WaterThatWouldLieOnTheFloorIsCaughtByTheDripTrayThatComesWithItsFloat()
    {
        Assert.True(bare.Hazards > dry.Hazards);
        var tray = Assert.Single(bare.Gains, gain => gain.Part.What == "north, float in a drip tray");
        Assert.Equal(bare.Hazards - dry.Hazards, tray.Cuts);
    }

    [Fact]
    public void WhatNobodyWasToldOfIsToldByTheCurrentThatShowsIt()
    {
        var current = Assert.Single(dry.Gains, gain => gain.Part.What == "north, current in the pump's own wire");
        Assert.InRange(current.TellsOf, 1, dry.Unnoticed);
    }

    [Fact]
    public void EachRowIsBroughtByThePartThatItNeeds()
    {
        var level = Assert.Single(dry.Gains, gain => gain.Part.What.Contains("level", StringComparison.Ordinal));
        Assert.Equal<IEnumerable<string>>(["no-fill", "floats-contradict"], level.Rows);
    }
}
