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
    public void LongStepsAndShortOnesGiveTheSameTemperatures()
    {
        var rack = Sites.OneRack(2).Racks[0];
        var leap = new RackClimate(rack, PlantStart.Default) { PumpW = 45 };
        var steps = new RackClimate(rack, PlantStart.Default) { PumpW = 45 };
        leap.LightW[0] = 80;
        steps.LightW[0] = 80;

        leap.Advance(MonotonicTime.Zero, MonotonicTime.FromMilliseconds(605_500), 0.14);
        for (var time = 0; time < 605_500; time += 500)
        {
            steps.Advance(MonotonicTime.FromMilliseconds(time), MonotonicTime.FromMilliseconds(time + 500), 0.14);
        }

        Assert.Equal(leap.AirC[0], steps.AirC[0], 1e-9);
        Assert.Equal(leap.SampledAirC[0], steps.SampledAirC[0], 1e-9);
        Assert.Equal(leap.SampledWaterC, steps.SampledWaterC, 1e-9);
        Assert.Equal(MonotonicTime.FromMilliseconds(600_000), leap.SampledAt);
        Assert.Equal(leap.SampledAt, steps.SampledAt);
    }

    [Fact]
    public void ALightWarmsItsOwnTierAndAFanCoolsIt()
    {
        var rack = Sites.OneRack(2).Racks[0];
        var still = Warmed(rack, fan: false);
        var fanned = Warmed(rack, fan: true);
        Assert.Equal(24, still.AirC[0], 0.1);
        Assert.Equal(20, still.AirC[1], 1e-9);
        Assert.InRange(fanned.AirC[0], 20.5, still.AirC[0] - 1);
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

    private static RackClimate Warmed(Rack rack, bool fan)
    {
        var climate = new RackClimate(rack, PlantStart.Default) { FanRuns = fan };
        climate.LightW[0] = 80;
        climate.Advance(MonotonicTime.Zero, MonotonicTime.FromMilliseconds(4_000_000), 0.14);
        return climate;
    }
}
