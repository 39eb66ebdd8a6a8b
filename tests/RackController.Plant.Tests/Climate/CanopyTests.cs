namespace RackController.Plant.Tests;

public class CanopyTests
{
    private const double SecondsPerDay = 86_400;
    private static readonly double Psychrometric = Atmosphere.PsychrometricKPaPerK(Atmosphere.StandardKPa);

    [Fact]
    public void ACropUnderLampsUsesMillimetresADayAndFarLessInTheDark()
    {
        var lit = Transpired(170, 22, 0.60) * SecondsPerDay;
        var dark = Transpired(0, 20, 0.60) * SecondsPerDay;
        // One to three mm in a lit day; common practice, no source.
        Assert.InRange(lit, 1, 3);
        Assert.InRange(dark, 0.05, lit / 3);
    }

    [Fact]
    public void ItIsTheHourlyEquationWithTheLightAsItsRadiation()
    {
        // 200 umol/m2/s at 4.6 umol/J, 0.85 of it absorbed: 36.96 W/m2, which is 0.13304 MJ/m2 in an hour. Closed form.
        var saturation = HumidAir.SaturationKPa(24);
        var vapour = saturation * 0.6;
        var hour = new PenmanMonteith(37, 0.24).WaterMm(
            0.13304, 24, HumidAir.SlopeKPaPerK(24, saturation), saturation - vapour, 0.5, Psychrometric);
        Assert.Equal(hour, Transpired(200, 24, 0.6) * 3600, 1e-5);
    }

    [Fact]
    public void DryAirAndAFanDrawMoreFromIt()
    {
        Assert.True(Transpired(170, 22, 0.4) > Transpired(170, 22, 0.8));
        Assert.True(Transpired(170, 22, 0.5, Canopy.FannedMPerS) > Transpired(170, 22, 0.5, Canopy.StillMPerS));
        Assert.True(Transpired(0, 22, 1.2) >= 0);
    }

    [Fact]
    public void LeavesThatDrinkAreNearTheAirAndDryOnesUnderLightAreWarmer()
    {
        var light = Canopy.AbsorbedWPerM2(170);
        var drinking = Canopy.LeafC(light, Transpired(170, 22, 0.6), 22, Canopy.StillMPerS);
        var dry = Canopy.LeafC(light, 0, 22, Canopy.StillMPerS);
        var dark = Canopy.LeafC(0, Transpired(0, 22, 0.6), 22, Canopy.StillMPerS);
        Assert.InRange(drinking, 20, 23);
        Assert.InRange(dry, 23, 28);
        Assert.InRange(dark, 20, 22);
    }

    [Fact]
    public void TheHeatOfALeafAddsUp()
    {
        // Light = vapour + what the warmer leaf gives to the air (1215.6 J/(m3 K) u / 208) and by radiation (5.54 W/(m2 K)).
        var light = Canopy.AbsorbedWPerM2(250);
        var leaf = Canopy.LeafC(light, 5e-6, 25, 1.0);
        Assert.Equal(light, 2.45e6 * 5e-6 + (leaf - 25) * (1215.6 / 208 + 5.54), 1e-9);
    }

    [Theory]
    // VPD(leaf) = e(Tleaf) - RH e(Tair), with the rounded pressures of FAO-56 equation 11: 20 degrees 2.3383, 25 degrees 3.1678 kPa
    // (computed).
    [InlineData(25, 60, 25, 1.267)]
    [InlineData(25, 60, 20, 0.4376)]
    [InlineData(20, 70, 25, 1.5310)]
    public void ALeafHasADeficitOfItsOwn(double airC, double humidity, double leafC, double kilopascals) =>
        Assert.Equal(kilopascals, HumidAir.DeficitKPa(leafC, HumidAir.SaturationKPa(airC) * humidity / 100), 5e-4);

    private static double Transpired(double ppfd, double airC, double humidity, double windMPerS = Canopy.StillMPerS) =>
        Canopy.TranspirationKgPerM2S(
            Canopy.AbsorbedWPerM2(ppfd), airC, HumidAir.SaturationKPa(airC) * humidity, windMPerS, Psychrometric);
}
