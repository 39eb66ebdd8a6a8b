namespace RackController.Growing.Tests;

public sealed class FitTests
{
    // Arithmetic of the definition of the daily light integral: 200 umol/m2/s give 0.72 mol/m2 in an hour.
    [Fact]
    public void ALampIsOnForAsLongAsTheDailyLightWants()
    {
        var hours = Fit.HoursOn(SomeCrop.Stage(9, 10.8), new TierKind(4, 200, 2, "coir"))!.Value;
        Assert.Equal(12.5, hours.Least, 9);
        Assert.Equal(15, hours.Most, 9);
    }

    [Theory]
    [InlineData(90, 2, "coir", "the lamp gives 90 umol/m2/s", "a lamp that gives 100 to 300 umol/m2/s")]
    [InlineData(200, 3, "coir", "floods come 3 times a day", "a rack that is flooded 1 to 2 times a day")]
    [InlineData(200, 1, "hemp mat", "floods come 1 times a day", "a rack that is flooded 2 to 4 times a day")]
    [InlineData(110, 2, "coir", "12 to 18 h of 110 umol/m2/s do not give 9 to 12 mol/m2/d", "a lamp of 139 to 278 umol/m2/s")]
    public void WhatDoesNotSuitSaysWhatWouldBeRight(double ppfdUmolPerM2S, int floods, string media, string reason, string cure)
    {
        var trouble = Fit.Trouble(SomeCrop.Stage(9, 12), new TierKind(4, ppfdUmolPerM2S, floods, media))!;
        Assert.Equal((reason, cure), (trouble.Reason, trouble.Cure));
    }
}
