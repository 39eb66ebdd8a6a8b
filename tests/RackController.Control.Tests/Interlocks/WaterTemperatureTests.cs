namespace RackController.Control.Tests.Interlocks;

/// <summary>Row water-temperature.</summary>
public class WaterTemperatureTests
{
    [Theory]
    [InlineData(26.1)]
    [InlineData(11.9)]
    public void WaterOutOfRangeRaisesAnAlarmAndSwitchesNothing(double waterC)
    {
        var rig = TemperatureTests.LitRig();
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
        var rig = TemperatureTests.LitRig();
        rig.Set("north/water", waterC);
        rig.Scan();

        Assert.Null(rig.Alarm("north/water-temperature"));
    }

    [Theory]
    [InlineData(26.1, 25.6, 25.5)]
    [InlineData(11.9, 12.4, 12.5)]
    public void TheWaterAlarmReturnsOnceTheWaterIsWellWithinItsLimits(double outC, double stillOutC, double withinC)
    {
        var rig = TemperatureTests.LitRig();
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
        rig.Scan();
        Assert.Equal("the water when last measured was outside 12 °C to 26 °C", rig.Alarm("north/water-temperature")!.Cause);
    }
}
