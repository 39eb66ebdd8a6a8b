namespace RackController.Plant.Tests;

public class DissolvedOxygenTests
{
    [Theory]
    // APHA Standard Methods, table 4500-O:I (from memory), for fresh water at one atmosphere.
    [InlineData(0, 14.621)]
    [InlineData(10, 11.288)]
    [InlineData(15, 10.084)]
    [InlineData(20, 9.092)]
    [InlineData(25, 8.263)]
    [InlineData(30, 7.559)]
    // Computed from the equation.
    [InlineData(5, 12.771)]
    [InlineData(18, 9.467)]
    [InlineData(22, 8.744)]
    [InlineData(28, 7.828)]
    [InlineData(35, 6.949)]
    public void FreshWaterHoldsWhatTheTablesSay(double celsius, double mgPerL) =>
        Assert.Equal(mgPerL, DissolvedOxygen.SaturationMgPerL(celsius, 0, Atmosphere.StandardKPa), 1e-3);

    [Theory]
    // Computed from the equations, which are from memory.
    [InlineData(2, 1, 8.986)]
    [InlineData(0, 0.95, 8.627)]
    public void SaltAndThinAirLeaveLess(double salinityGPerKg, double atmospheres, double mgPerL) => Assert.Equal(
        mgPerL, DissolvedOxygen.SaturationMgPerL(20, salinityGPerKg, atmospheres * Atmosphere.StandardKPa), 1e-3);
}
