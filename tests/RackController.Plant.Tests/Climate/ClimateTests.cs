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

    [Fact]
    public void AirWarmsAsAFirstOrderLagDoes()
    {
        // Closed form: 20 C + 80 W x 0.05 K/W (1 - exp(-t / 600 s)).
        var rack = new RackDynamics(Sites.OneRack(2).Racks[0], PlantStart.Default);
        rack.Take(Lit(fan: false));
        foreach (var seconds in new[] { 1, 60, 600, 605, 3000 })
        {
            rack.AdvanceTo(MonotonicTime.FromMilliseconds(seconds * 1000));
            Assert.Equal(20 + 4 * (1 - Math.Exp(-seconds / 600.0)), AirC(rack, 0), 5e-3);
        }
    }

    [Fact]
    public void ALightWarmsItsOwnTierAndAFanCoolsIt()
    {
        var rack = Sites.OneRack(2).Racks[0];
        var still = Warmed(rack, fan: false);
        var fanned = Warmed(rack, fan: true);
        Assert.Equal(24, AirC(still, 0), 0.1);
        Assert.Equal(20, AirC(still, 1), 1e-9);
        Assert.InRange(AirC(fanned, 0), 20.5, AirC(still, 0) - 1);
    }

    [Fact]
    public void ACropUsesMillimetresADayAndMoreUnderLight()
    {
        const double Day = 86_400;
        var lit = Evaporation.OfCrop(200, 1.0) * Day * 1000;
        var dark = Evaporation.OfCrop(0, 1.0) * Day * 1000;
        // A few mm a day at most under lamps; common practice, no source.
        Assert.InRange(lit, 0.5, 5);
        Assert.InRange(dark, 0.1, lit);
    }

    private static RackDynamics Warmed(Rack rack, bool fan)
    {
        var warmed = new RackDynamics(rack, PlantStart.Default);
        warmed.Take(Lit(fan));
        warmed.AdvanceTo(MonotonicTime.FromMilliseconds(4_000_000));
        return warmed;
    }

    private static RackInputs Lit(bool fan)
    {
        var inputs = new RackInputs(2) { RoomC = 20, RoomVapourKPa = 1, FanRuns = fan };
        inputs.LightW[0] = 80;
        return inputs;
    }

    private static double AirC(RackDynamics rack, int tier) => rack.State[rack.Layout.AirC(tier)];
}
