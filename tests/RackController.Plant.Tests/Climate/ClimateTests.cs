using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class ClimateTests
{
    [Theory]
    // FAO-56 Example 3, as read at ncl.ucar.edu (satvpr_temp_fao56).
    [InlineData(24.5, 3.07465)]
    [InlineData(15, 1.70535)]
    public void SaturationPressureIsThatOfFao56(double celsius, double kilopascals) =>
        Assert.Equal(kilopascals, HumidAir.SaturationKPa(celsius), 1e-5);

    [Theory]
    // Computed from FAO-56 equation 11.
    [InlineData(25, 60, 1.267)]
    [InlineData(22, 65, 0.925)]
    [InlineData(28, 70, 1.134)]
    public void TheDeficitIsWhatIsMissingToSaturation(double celsius, double humidity, double kilopascals)
    {
        var vapour = HumidAir.SaturationKPa(celsius) * humidity / 100;
        Assert.Equal(kilopascals, HumidAir.DeficitKPa(celsius, vapour), 1e-3);
        Assert.Equal(humidity, HumidAir.RelativePercent(celsius, vapour), 1e-9);
    }

    // ASHRAE Fundamentals 2017, chapter 1, table 3, as held by the tests of the library psychrolib: 872.6, 3169.7 and 12351.3 Pa. Another
    // formula than ours; above freezing and below 30 C they agree to one part in a thousand, at 50 C to two.
    [Theory]
    [InlineData(5, 0.8726, 1e-3)]
    [InlineData(25, 3.1697, 1e-3)]
    [InlineData(50, 12.3513, 2e-3)]
    public void SaturationPressureIsNearThatOfAnotherTable(double celsius, double kilopascals, double share) =>
        Assert.InRange(HumidAir.SaturationKPa(celsius), (1 - share) * kilopascals, (1 + share) * kilopascals);

    // FAO-56 Example 5, as quoted by the library pyet (p. 39): 25 and 18 C with 54 and 82 %: 1.70 kPa of vapour by equation 17, 1.78 kPa
    // by the mean humidity (equation 19), and a deficit of what is missing to the mean of both saturation pressures (equation 12).
    [Fact]
    public void TheVapourOfFaoExample5IsReproduced()
    {
        var (warmKPa, coolKPa) = (HumidAir.SaturationKPa(25), HumidAir.SaturationKPa(18));
        Assert.Equal(1.70, (coolKPa * 0.82 + warmKPa * 0.54) / 2, 0.005);
        Assert.Equal(1.78, (0.82 + 0.54) / 2 * (coolKPa + warmKPa) / 2, 0.005);
    }

    [Fact]
    public void AirWarmsAsAFirstOrderLagDoes()
    {
        // Closed form without a crop: 20 C + 80 W x 0.05 K/W (1 - exp(-t / 1500 s)).
        var rack = Dark();
        rack.Take(Lit(fan: false));
        foreach (var seconds in new[] { 1, 60, 600, 605, 3000 })
        {
            rack.AdvanceTo(MonotonicTime.FromMilliseconds(seconds * 1000));
            Assert.Equal(20 + 4 * (1 - Math.Exp(-seconds / 1500.0)), AirC(rack, 0), 5e-3);
        }
    }

    [Fact]
    public void ALightWarmsItsOwnTierAndAFanCoolsIt()
    {
        var still = Warmed(fan: false);
        var fanned = Warmed(fan: true);
        Assert.Equal(24, AirC(still, 0), 0.1);
        Assert.Equal(20, AirC(still, 1), 1e-9);
        Assert.InRange(AirC(fanned, 0), 20.5, AirC(still, 0) - 1);
    }

    private static RackDynamics Warmed(bool fan)
    {
        var warmed = Dark();
        warmed.Take(Lit(fan));
        warmed.AdvanceTo(MonotonicTime.FromMilliseconds(10_000_000));
        return warmed;
    }

    // Nothing grows.
    private static RackDynamics Dark() => new(Sites.OneRack(2).Racks[0], PlantStart.Default with { CropFactor = 0 });

    private static RackInputs Lit(bool fan)
    {
        var inputs = new RackInputs(2) { FanRuns = fan };
        inputs.LightW[0] = 80;
        return inputs;
    }

    private static double AirC(RackDynamics rack, int tier) => rack.State[rack.Layout.AirC(tier)];
}
