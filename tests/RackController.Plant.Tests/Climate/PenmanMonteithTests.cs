namespace RackController.Plant.Tests;

public class PenmanMonteithTests
{
    private static readonly PenmanMonteith Day = new(900, 0.34);
    private static readonly PenmanMonteith Hour = new(37, 0.34);

    [Fact]
    public void TheRadiationUnderItIsThatOfFao56()
    {
        // FAO-56 Examples 8 to 11, as quoted by the library pyet (p. 47-52): 20 S on 3 September; 22.9 S on 15 May with 7.1 h of
        // sunshine, at 25.1 and 19.1 degrees Celsius and 2.1 kPa (these three from memory).
        Assert.Equal(32.2, Fao56Day.ExtraterrestrialMJ(-20, 246), 0.05);
        Assert.Equal(11.7, Fao56Day.DaylightH(-20, 246), 0.05);
        Assert.Equal(14.5, Fao56Day.SolarMJ(-22.9, 135, 7.1), 0.05);
        var extraterrestrial = Fao56Day.ExtraterrestrialMJ(-22.9, 135);
        Assert.Equal(3.5, Fao56Day.LongWaveMJ(25.1, 19.1, 2.1, 14.5, extraterrestrial, 0), 0.1);
    }

    [Fact]
    public void FaoExample18IsReproduced()
    {
        // FAO-56 Example 18, as quoted by the library pyet (p. 72): 50.80 N, 100 m, 6 July, 3.9 mm/d. 3.880 is computed.
        var vapour = (HumidAir.SaturationKPa(12.3) * 0.84 + HumidAir.SaturationKPa(21.5) * 0.63) / 2;
        var solar = Fao56Day.SolarMJ(50.80, 187, 9.25);
        var net = Fao56Day.NetMJ(21.5, 12.3, vapour, solar, Fao56Day.ExtraterrestrialMJ(50.80, 187), 100);
        var water = OfDay(21.5, 12.3, vapour, net, windMPerS: 2.078, altitudeM: 100);
        Assert.Equal(3.9, water, 0.05);
        Assert.Equal(3.880, water, 0.005);
    }

    [Fact]
    public void FaoExample17IsReproduced()
    {
        // FAO-56 Example 17 (inputs and 5.72 mm/d from memory): 13.73 N, 2 m, April; months of 29.2 and 30.2 degrees Celsius.
        var solar = Fao56Day.SolarMJ(13.73, 105, 8.5);
        var net = Fao56Day.NetMJ(34.8, 25.6, 2.85, solar, Fao56Day.ExtraterrestrialMJ(13.73, 105), 2);
        Assert.Equal(5.72, OfDay(34.8, 25.6, 2.85, net - 0.14 * (30.2 - 29.2), windMPerS: 2, altitudeM: 2), 0.01);
    }

    [Fact]
    public void FaoExample20IsReproduced()
    {
        // FAO-56 Example 20: 45.72 N, 200 m, July; inputs as read at rdrr.io/cran/nightmares (ETo56_miss). 4.56 mm/d is computed, 4.6
        // published (from memory).
        var vapour = HumidAir.SaturationKPa(14.8);
        var net = Fao56Day.NetMJ(26.6, 14.8, vapour, 22.29, Fao56Day.ExtraterrestrialMJ(45.72, 196), 200);
        Assert.Equal(4.56, OfDay(26.6, 14.8, vapour, net, windMPerS: 2, altitudeM: 200), 0.03);
    }

    [Theory]
    // FAO-56 Example 19 (from memory), at 8 m: 14 to 15 h, and 2 to 3 h in the night with a sky eight tenths clear.
    [InlineData(38, 52, 3.3, 2.450, 3.543, 0.1, 0.63)]
    [InlineData(28, 90, 1.9, 0, 0, 0.5, 0.00)]
    public void FaoExample19IsReproduced(
        double celsius, double humidity, double windMPerS, double solar, double extraterrestrial, double intoGround, double mm)
    {
        var saturation = HumidAir.SaturationKPa(celsius);
        var vapour = saturation * humidity / 100;
        var clear = extraterrestrial > 0 ? solar / Fao56Day.ClearSky(extraterrestrial, 8) : 0.8;
        var net = Fao56Day.NetOfHourMJ(celsius, vapour, solar, clear);
        var water = Hour.WaterMm(
            net * (1 - intoGround), celsius, HumidAir.SlopeKPaPerK(celsius, saturation), saturation - vapour, windMPerS,
            Atmosphere.PsychrometricKPaPerK(Atmosphere.PressureKPa(8)));
        Assert.Equal(mm, water, 0.005);
    }

    [Theory]
    // FAO-56 Examples 2 and 4, as quoted by the library pyet (p. 32).
    [InlineData(1800, 81.8)]
    [InlineData(1200, 87.9)]
    public void PressureFallsWithAltitude(double altitudeM, double kilopascals) =>
        Assert.Equal(kilopascals, Atmosphere.PressureKPa(altitudeM), 0.05);

    [Fact]
    public void ThePsychrometricConstantIsThatOfFao56() =>
        Assert.Equal(0.054, Atmosphere.PsychrometricKPaPerK(Atmosphere.PressureKPa(1800)), 0.0005);

    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(35)]
    public void TheSlopeIsTheDerivativeOfTheSaturationPressure(double celsius)
    {
        var difference = (HumidAir.SaturationKPa(celsius + 0.01) - HumidAir.SaturationKPa(celsius - 0.01)) / 0.02;
        Assert.Equal(difference, HumidAir.SlopeKPaPerK(celsius, HumidAir.SaturationKPa(celsius)), difference * 2e-4);
    }

    private static double OfDay(double maxC, double minC, double vapour, double energy, double windMPerS, double altitudeM)
    {
        var mean = (maxC + minC) / 2;
        var saturation = (HumidAir.SaturationKPa(maxC) + HumidAir.SaturationKPa(minC)) / 2;
        return Day.WaterMm(
            energy, mean, HumidAir.SlopeKPaPerK(mean, HumidAir.SaturationKPa(mean)), saturation - vapour, windMPerS,
            Atmosphere.PsychrometricKPaPerK(Atmosphere.PressureKPa(altitudeM)));
    }
}
