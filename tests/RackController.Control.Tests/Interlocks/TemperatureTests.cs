using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Rows air-too-hot and water-temperature.</summary>
public class TemperatureTests
{
    [Fact]
    public void HotAirPutsOutTheLightsOfItsTierOnly()
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 32.1);
        rig.Scan();

        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.False(rig.IsOn("north/tier 2 light"));
        Assert.Equal("the air is at 32.1 °C and lights are out above 32 °C", rig.Why("north/tier 2 light").Summary);
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/tier 2/air-too-hot")!.State);
    }

    [Fact]
    public void TheLightsReturnOnceTheAirHasCooledByTheMargin()
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 33);
        rig.Scan();
        rig.Set("north/tier 2 air", 30.1);
        rig.LeapFor(Duration.FromMinutes(5));
        Assert.False(rig.IsOn("north/tier 2 light"));

        rig.Set("north/tier 2 air", 29.9);
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void AirAtItsLimitChangesNothing()
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 32);
        rig.Scan();

        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void AnUnknownTemperatureLeavesHotTiersDarkAndCoolOnesLit()
    {
        var cool = LitRig();
        cool.Silence("north/tier 2 air");
        cool.LeapFor(Duration.FromMinutes(10));
        Assert.True(cool.IsOn("north/tier 2 light"));

        var hot = LitRig();
        hot.Set("north/tier 2 air", 35);
        hot.Scan();
        hot.Silence("north/tier 2 air");
        hot.LeapFor(Duration.FromMinutes(10));
        Assert.False(hot.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void HotTiersStayDarkAcrossARestartThatLosesTheirTemperature()
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 35);
        rig.Scan();
        rig.Silence("north/tier 2 air");
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(10));

        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.False(rig.IsOn("north/tier 2 light"));
        Assert.Equal(
            "the air was too hot when last measured and lights are out above 32 °C", rig.Why("north/tier 2 light").Summary);

        rig.Speak("north/tier 2 air");
        rig.Set("north/tier 2 air", 29.9);
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Theory]
    [InlineData(26.1)]
    [InlineData(11.9)]
    public void WaterOutOfRangeRaisesAnAlarmAndSwitchesNothing(double waterC)
    {
        var rig = LitRig();
        rig.Set("north/water", waterC);
        rig.Scan();

        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/water-temperature")!.State);
        Assert.True(rig.IsOn("north/tier 1 light"));
    }

    [Theory]
    [InlineData(26)]
    [InlineData(12)]
    public void WaterAtItsLimitsTellsNobody(double waterC)
    {
        var rig = LitRig();
        rig.Set("north/water", waterC);
        rig.Scan();

        Assert.Null(rig.Alarm("north/water-temperature"));
    }

    [Theory]
    [InlineData(26.1, 25.6, 25.5)]
    [InlineData(11.9, 12.4, 12.5)]
    public void TheWaterAlarmReturnsOnceTheWaterIsWellWithinItsLimits(double outC, double stillOutC, double withinC)
    {
        var rig = LitRig();
        rig.Set("north/water", outC);
        rig.Scan();
        rig.Set("north/water", stillOutC);
        rig.Scan();
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/water-temperature")!.State);

        rig.Set("north/water", withinC);
        rig.Scan();
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm("north/water-temperature")!.State);
        var told = rig.Events.Last(happened => happened.Kind == EventKind.Alarm).Because;
        Assert.Contains($"is at {withinC:0.0} °C", told, StringComparison.Ordinal);
    }

    private static Rig LitRig()
    {
        var site = Sites.OneRack().WithSchedule(s => s with { Floods = s.Floods with { Times = new NoFloods() } });
        var air = new Sensor
        {
            Id = new SensorId(site.Sensors.Length),
            Name = "north/tier 2 air",
            Kind = SensorKind.AirTemperature,
            Rack = new RackId(0),
            TierNumber = 2,
            PlausibleMin = -20,
            PlausibleMax = 60,
            StaleAfter = Duration.FromSeconds(30),
        };
        var water = air with
        {
            Id = new SensorId(site.Sensors.Length + 1),
            Name = "north/water",
            Kind = SensorKind.WaterTemperature,
            TierNumber = null,
        };
        var rig = new Rig(site with { Sensors = [.. site.Sensors, air, water] });
        rig.LeapFor(Duration.FromMinutes(1));
        return rig;
    }
}
