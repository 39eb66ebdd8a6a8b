namespace RackController.Plant.Tests;

public class MotorSpeedTests
{
    [Fact]
    public void AtItsVoltageAMotorTurnsAtItsSpeed() => Assert.Equal(1, MotorSpeed.Share(1));

    [Theory]
    [InlineData(0.95)]
    [InlineData(0.8)]
    [InlineData(0.6)]
    // The balance itself, closed form: motor v^2 s / s0 with 1 - s = 0.9 n and s0 = 0.1, against n^2 of a pump.
    public void TheTorqueOfTheMotorIsThatOfThePump(double voltageShare)
    {
        var speed = MotorSpeed.Share(voltageShare);
        Assert.InRange(speed, 0.5, 0.999);
        Assert.Equal(speed * speed, voltageShare * voltageShare * (1 - 0.9 * speed) / 0.1, 1e-12);
    }

    [Fact]
    public void ALittleLessVoltageCostsLittleSpeed() =>
        // The slip of 10 % grows as 1 / v^2 and less, because the pump asks less: at 90 % of the voltage it is 12 %, arithmetic.
        Assert.Equal(0.98, MotorSpeed.Share(0.9), 0.002);
}
