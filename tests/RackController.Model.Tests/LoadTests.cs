using RackController.Testing;

namespace RackController.Model.Tests;

public class LoadTests
{
    // P = U I cos phi for one phase, by the definitions of active power and power factor (IEC 60050-131, from memory), so
    // I = P / (U cos phi); the numbers are worked by hand.
    [Theory]
    [InlineData(80, 1.0, 120, 0.666_666_7)]
    [InlineData(60, 0.7, 230, 0.372_670_8)]
    [InlineData(1440, 1.0, 120, 12.0)]
    [InlineData(45, 0.5, 100, 0.9)]
    public void CurrentIsRealPowerOverVoltageAndPowerFactor(double powerW, double powerFactor, double voltageV, double currentA)
    {
        var load = Sites.OneRack().Loads[0] with { PowerW = powerW, PowerFactor = powerFactor };
        Assert.Equal(currentA, load.CurrentA(voltageV), 6);
    }
}
