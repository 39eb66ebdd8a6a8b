using CsCheck;
using NodaTime;

namespace RackController.Growing.Tests;

public sealed class LightAdviceTests
{
    // J. Faust's table, as quoted at support.specmeters.com, question 102: 38.1 umol/m2/s for 12 h is 1.6 mol/m2/d, printed to one decimal.
    [Fact]
    public void ThePublishedTableIsReadBackwards()
    {
        Assert.Equal(12, DailyLight.LitFor(38.1, 1.64592).TotalHours, 6);
        Assert.Equal(38.1, DailyLight.PpfdUmolPerM2S(1.64592, Duration.FromHours(12)), 6);
    }

    [Fact]
    public void HoursAndLightAgreeBothWays() => Gen.Select(Gen.Double[20, 1500], Gen.Double[0.5, 60]).Sample((ppfd, mol) =>
        Assert.Equal(mol, DailyLight.MolPerM2(ppfd, DailyLight.LitFor(ppfd, mol)), 6));

    // Arithmetic: 12e6 / (170 x 3600) = 19.6 h; 12e6 / (18 x 3600) = 185 umol/m2/s.
    [Fact]
    public void ALampThatIsTooWeakIsToldWhatWouldDo()
    {
        var lines = LightAdvice.Lines(170, Duration.FromHours(16), 12).ToList();
        Assert.StartsWith("now 16 h x 170 umol/m2/s x 3600 s/h / 1000000 = 9.8 mol/m2/d", lines[0], StringComparison.Ordinal);
        Assert.Equal(
            "for 12 mol/m2/d: 12 x 1000000 / (170 x 3600) = 19.6 h a day, more than the 18 h that most crops bear: a lamp of "
            + "185 umol/m2/s gives it in those",
            lines[1]);
    }

    [Fact]
    public void WithoutAWishItSaysWhatThereIs() => Assert.Single(LightAdvice.Lines(200, Duration.FromHours(16), null));
}
