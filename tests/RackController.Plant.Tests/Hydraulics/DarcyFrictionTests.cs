namespace RackController.Plant.Tests;

public class DarcyFrictionTests
{
    [Fact]
    public void SwameeJainGivesItsPublishedFactor() =>
        // Swamee and Jain 1976, as quoted by the test suite of the library fluids (tests/test_friction.py), which writes
        // (6.97/Re)^0.9 where EPANET writes 5.74/Re^0.9: the same to six digits.
        Assert.Equal(0.0184524244, DarcyFriction.Factor(1e5, 1e-4, out _), 3e-8);

    [Theory]
    // Computed with the library fluids.
    [InlineData(4e3, 1e-3, 0.0416954)]
    [InlineData(5e3, 1e-4, 0.0379740)]
    [InlineData(1e4, 0, 0.0309720)]
    [InlineData(1e4, 5e-3, 0.0383293)]
    [InlineData(3e4, 1e-3, 0.0261274)]
    [InlineData(1e5, 1e-2, 0.0387509)]
    [InlineData(1e6, 1e-3, 0.0200292)]
    public void TheTurbulentRangeFollowsSwameeJain(double reynolds, double roughness, double factor) =>
        Assert.Equal(factor, DarcyFriction.Factor(reynolds, roughness, out _), 2e-7);

    [Theory]
    // Computed from the cubic of Dunlop as the EPANET engine has it (src/hydcoeffs.c), relative roughness 1e-4.
    [InlineData(2300, 0.02918)]
    [InlineData(2800, 0.03105)]
    [InlineData(3000, 0.03313)]
    [InlineData(3500, 0.03871)]
    [InlineData(3999.99, 0.04067)]
    public void TheTransitionFollowsDunlop(double reynolds, double factor) =>
        Assert.Equal(factor, DarcyFriction.Factor(reynolds, 1e-4, out _), 1e-5);

    [Theory]
    [InlineData(2000.001)]
    [InlineData(2500)]
    [InlineData(3700)]
    [InlineData(4001)]
    [InlineData(90_000)]
    public void TheSlopeIsThatOfTheFactor(double reynolds)
    {
        const double Step = 0.01;
        var numeric = (DarcyFriction.Factor(reynolds + Step, 1e-4, out _) - DarcyFriction.Factor(reynolds, 1e-4, out _)) / Step;
        _ = DarcyFriction.Factor(reynolds + Step / 2, 1e-4, out var slope);
        Assert.Equal(numeric, slope, 1e-9);
    }
}
