using NodaTime;

namespace RackController.Growing.Tests;

public sealed class DailyLightTests
{
    // Wikipedia, "Daily light integral": 1 umol/m2/s for 24 h is 0.0864 mol/m2/d.
    [Fact]
    public void OneMicromoleThroughoutADayIsTheConversionFactorOfTheDefinition() =>
        Assert.Equal(0.0864, DailyLight.MolPerM2(1, Duration.FromHours(24)), 10);

    // J. Faust's table of daily light integrals, as quoted by an instrument maker's support page (support.specmeters.com,
    // question 102): 38.1 umol/m2/s for 12 h is 1.6 mol/m2/d, printed to one decimal.
    [Fact]
    public void ThePublishedTableIsReproducedToItsLastDigit() =>
        Assert.Equal(1.6, DailyLight.MolPerM2(38.1, Duration.FromHours(12)), 1);

    // Arithmetic of the definition: PPFD x h x 3600 / 1e6.
    [Theory]
    [InlineData(100, 12, 4.32)]
    [InlineData(150, 16, 8.64)]
    [InlineData(200, 16, 11.52)]
    [InlineData(200, 18, 12.96)]
    [InlineData(250, 14, 12.60)]
    public void OrdinaryRackLightGivesTheDailyLightOfItsArithmetic(double ppfdUmolPerM2S, double hours, double molPerM2) =>
        Assert.Equal(molPerM2, DailyLight.MolPerM2(ppfdUmolPerM2S, Duration.FromHours(hours)), 10);

    [Fact]
    public void ADarkTierCollectsNothing() => Assert.Equal(0, DailyLight.MolPerM2(0, Duration.FromHours(16)));
}
