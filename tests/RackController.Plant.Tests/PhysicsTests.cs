namespace RackController.Plant.Tests;

public class PhysicsTests
{
    [Theory]
    // IAPWS SR6-08 Table 8 at 0.1 MPa, as quoted by the library iapws (test.py).
    [InlineData(25.0, 889.996774)]
    [InlineData(-13.15, 3058.36075)]
    public void ViscosityIsThatOfTheIapwsTable(double celsius, double microPascalSeconds) =>
        Assert.Equal(microPascalSeconds, Physics.Viscosity(celsius) * 1e6, 0.001 * microPascalSeconds * 0.01);

    [Theory]
    // Computed with the library iapws at 0.1 MPa.
    [InlineData(5, 999.966, 1.5182)]
    [InlineData(15, 999.102, 1.1386)]
    [InlineData(20, 998.207, 1.0034)]
    [InlineData(25, 997.047, 0.8926)]
    [InlineData(35, 994.033, 0.7234)]
    public void DensityAndKinematicViscosityFollowIapws(double celsius, double density, double millionthM2PerS)
    {
        Assert.Equal(density, Physics.Density(celsius), 0.05);
        Assert.Equal(millionthM2PerS, Physics.KinematicViscosity(celsius) * 1e6, 2e-4);
    }
}
