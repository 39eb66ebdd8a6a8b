using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Replaying;

public class WhatIfTests
{
    [Fact]
    public void TheSameFileWouldHaveMadeTheSameOfIt()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(Duration.FromDays(2), new FloodNow("Ada", new RackId(0)));

        var result = Ask(days.Site, days);

        Assert.Empty(result.Differences);
        Assert.Empty(result.Trips);
        Assert.Empty(result.Alarms);
        Assert.All(result.Loads, load => Assert.Equal(load.Then, load.With));
    }

    [Fact]
    public void AFillThatIsAMinuteShorterSavesAMinuteOfEachOfSixFloods()
    {
        var days = new RecordedDays(Sites.OneRack().WithSchedule(schedule => schedule with { Floods = Floods(Duration.FromMinutes(3)) }));
        days.Live(Duration.FromDays(1));

        var result = Ask(days.Site.WithSchedule(schedule => schedule with { Floods = Floods(Duration.FromMinutes(2)) }), days);

        var pump = result.Loads.Single(load => load.Name == "north/pump");
        Assert.InRange(pump.OnlyThen, Duration.FromSeconds(6 * 57), Duration.FromSeconds(6 * 63));
        Assert.Equal(pump.Then - pump.OnlyThen, pump.With);
        Assert.Equal(Duration.Zero, pump.OnlyWith);
        Assert.Equal("north/pump", result.Differences[0].Subject);
    }

    [Fact]
    public void ALimitThatWouldHaveActedIsToldAsATripAndAnAlarm()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(Duration.FromHours(2), new FloodNow("Ada", new RackId(0)));

        var result = Ask(days.Site.WithLimits(limits => limits with { PumpMaximumRun = Duration.FromSeconds(30) }), days);

        Assert.Contains(result.Trips, count => count is { Subject: "north/pump-maximum-run", Then: 0, With: > 0 });
        Assert.Contains(result.Alarms, count => count is { Subject: "north/pump-maximum-run", Then: 0, With: > 0 });
    }

    [Fact]
    public void ALoadOrSensorThatIsNotOnRecordIsSaid()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(Duration.FromHours(1));
        var other = days.Site with
        {
            Loads = [.. days.Site.Loads.Select((load, index) => index == 0 ? load with { Name = "north/another pump" } : load)],
            Sensors = [.. days.Site.Sensors.Select((sensor, index) => index == 0 ? sensor with { Name = "north/new" } : sensor)],
        };

        var result = Ask(other, days);

        Assert.Null(result.Loads.Single(load => load.Name == "north/another pump").Then);
        Assert.Equal("north/new", Assert.Single(result.Unknown));
    }

    private static WhatIfResult Ask(Site other, RecordedDays days)
    {
        var whatIf = new WhatIf(other);
        whatIf.Tell(days.Site, days.Run);
        return whatIf.Result();
    }

    private static FloodPlan Floods(Duration fill) => new(
        new FloodsEvery(Duration.FromHours(4), LocalTime.Midnight, Duration.FromHours(24)), new FillForTime(fill),
        Duration.FromMinutes(1), Duration.FromMinutes(20), MissedFloods.Skip);
}
