using RackController.Testing;

namespace RackController.Model.Tests;

public class SensorTests
{
    [Theory]
    [InlineData(SensorKind.ReservoirLowFloat, 0)]
    [InlineData(SensorKind.SupplySense, 0)]
    [InlineData(SensorKind.ReservoirFullFloat, 1)]
    [InlineData(SensorKind.TrayFullFloat, 1)]
    [InlineData(SensorKind.TrayHighFloat, 1)]
    [InlineData(SensorKind.LeakRope, 1)]
    public void AContactHasAHarmfulValue(SensorKind kind, double side)
    {
        var sensor = Of(kind);

        Assert.True(sensor.IsContact);
        Assert.Equal(side, sensor.HarmfulValue);
    }

    [Theory]
    [InlineData(SensorKind.ReservoirLevel)]
    [InlineData(SensorKind.TrayLevel)]
    [InlineData(SensorKind.CircuitCurrent)]
    [InlineData(SensorKind.PumpCurrent)]
    [InlineData(SensorKind.PumpFlow)]
    [InlineData(SensorKind.WaterTemperature)]
    [InlineData(SensorKind.AirTemperature)]
    [InlineData(SensorKind.AirHumidity)]
    [InlineData(SensorKind.LightLevel)]
    public void AMeasuredValueHasNone(SensorKind kind)
    {
        var sensor = Of(kind);

        Assert.False(sensor.IsContact);
        Assert.Null(sensor.HarmfulValue);
    }

    [Fact]
    public void EveryFloatIsAContactAndNotEveryContactAFloat()
    {
        Assert.All(Enum.GetValues<SensorKind>().Where(kind => kind.IsFloat()), kind => Assert.True(kind.IsContact()));
        Assert.Equal(
            [SensorKind.LeakRope, SensorKind.SupplySense],
            Enum.GetValues<SensorKind>().Where(kind => kind.IsContact() && !kind.IsFloat()));
    }

    private static Sensor Of(SensorKind kind) => Sites.OneRack().Sensors[0] with { Kind = kind };
}
