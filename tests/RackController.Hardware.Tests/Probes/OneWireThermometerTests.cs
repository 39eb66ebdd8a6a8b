using RackController.Hardware.Probes;

namespace RackController.Hardware.Tests.Probes;

public sealed class OneWireThermometerTests
{
    /// <summary>What the register holds after power-up, by the data sheet of the DS18B20 (from memory).</summary>
    [Fact]
    public void WhatItSaysAfterPowerUpIsNoReading()
    {
        var thermometer = Saying(85, 21.5, 85, 21.4);
        Assert.Throws<IOException>(() => thermometer.Read());
        Assert.Equal(21.5, thermometer.Read());
        Assert.Throws<IOException>(() => thermometer.Read());
        Assert.Equal(21.4, thermometer.Read());
    }

    [Fact]
    public void WaterThatIsReallySoHotIsBelieved()
    {
        var thermometer = Saying(84.5, 85);
        Assert.Equal(84.5, thermometer.Read());
        Assert.Equal(85, thermometer.Read());
    }

    [Fact]
    public void WhereTheKernelHasNoSuchThermometerThereIsNoReading() =>
        Assert.Throws<DirectoryNotFoundException>(() => OneWireThermometer.Named("28-000000000000").Read());

    private static OneWireThermometer Saying(params double[] valuesC)
    {
        var left = new Queue<double>(valuesC);
        return new OneWireThermometer(left.Dequeue);
    }
}
