using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Growing.Tests;

public sealed class UsualIntervalsTests
{
    // Common practice, no source.
    [Theory]
    [InlineData("coir", Shedding.Much)]
    [InlineData("Peat and perlite", Shedding.Much)]
    [InlineData("coir mat", Shedding.Much)]
    [InlineData("hemp mat", Shedding.Some)]
    [InlineData("jute felt", Shedding.Some)]
    [InlineData("stone wool", Shedding.Little)]
    [InlineData("clay pebbles", Shedding.Little)]
    [InlineData("moon dust", Shedding.Much)]
    public void AMediaShedsByItsWordsAndOneThatIsNotKnownShedsMuch(string media, Shedding shedding) =>
        Assert.Equal(shedding, MediaShedding.Of(media));

    [Fact]
    public void WhatShedsMoreIsDueNoLaterByAnyCount()
    {
        foreach (var work in Enum.GetValues<UpkeepWork>())
        {
            var some = UsualIntervals.Usual(work, Shedding.Some);
            var (little, much) = (UsualIntervals.Usual(work, Shedding.Little), UsualIntervals.Usual(work, Shedding.Much));
            AssertNoLater(some, little);
            AssertNoLater(much, some);
            Assert.NotEqual(much, little);
        }
    }

    [Fact]
    public void TheTierThatShedsMostDecidesForTheRack()
    {
        var rack = Sites.OneRack(tiers: 3).Racks[0];
        var mixed = rack with { Tiers = [With(rack.Tiers[0], "stone wool"), With(rack.Tiers[1], "coir"), With(rack.Tiers[2], "hemp mat")] };

        Assert.Equal("coir", MediaShedding.MostOf(mixed));
        Assert.Equal(UsualIntervals.Usual(UpkeepWork.Screen, Shedding.Much), UsualIntervals.Of(mixed, UpkeepWork.Screen));
    }

    [Fact]
    public void WhatTheRackFileSaysHolds()
    {
        var every = new UpkeepInterval(7, null, null);
        var rack = Sites.OneRack().Racks[0] with { Upkeep = [new(UpkeepWork.Screen, every), new(UpkeepWork.Flush, null)] };

        Assert.Equal(every, UsualIntervals.Of(rack, UpkeepWork.Screen));
        Assert.Null(UsualIntervals.Of(rack, UpkeepWork.Flush));
        Assert.NotNull(UsualIntervals.Of(rack, UpkeepWork.Pump));
    }

    [Fact]
    public void FloatsAreWipedWhereThereAreAny()
    {
        var site = Sites.OneRack();
        var blind = site with { Sensors = [.. site.Sensors.Where(sensor => sensor.Kind == SensorKind.SupplySense)] };

        Assert.Contains(UpkeepWork.Floats, UpkeepWorks.Of(site, site.Racks[0]));
        Assert.DoesNotContain(UpkeepWork.Floats, UpkeepWorks.Of(blind, blind.Racks[0] with { FloatCutout = null }));
        Assert.Contains(UpkeepWork.Floats, UpkeepWorks.Of(blind, blind.Racks[0] with { FloatCutout = new FloatCutout(null, 25) }));
    }

    [Fact]
    public void EveryWorkIsFoundByItsKeyAndHasItsWords() => Assert.All(Enum.GetValues<UpkeepWork>(), work =>
    {
        Assert.Equal(work, UpkeepWorks.OfKey(work.Key()));
        Assert.NotEmpty(work.InWords());
        Assert.NotEmpty(work.Advice());
    });

    [Theory]
    [InlineData(null)]
    [InlineData("Screen")]
    [InlineData("sweep")]
    public void NoOtherWordIsAWork(string? key) => Assert.Null(UpkeepWorks.OfKey(key));

    [Fact]
    public void AnIntervalIsSaidInAPhrase() => Assert.Equal(
        "every 1 flood or 14 days or 200 h of the pump", UpkeepWords.Interval(new UpkeepInterval(1, 14, Duration.FromHours(200))));

    private static Tier With(Tier tier, string media) =>
        tier with { Tray = tier.Tray with { Contents = tier.Tray.Contents with { Media = media } } };

    private static void AssertNoLater(UpkeepInterval more, UpkeepInterval less)
    {
        Assert.True(more.Floods is null == less.Floods is null && more.Days is null == less.Days is null);
        Assert.True((more.Floods ?? 0) <= (less.Floods ?? 0) && (more.Days ?? 0) <= (less.Days ?? 0));
        Assert.True((more.PumpOn ?? Duration.Zero) <= (less.PumpOn ?? Duration.Zero));
    }
}
