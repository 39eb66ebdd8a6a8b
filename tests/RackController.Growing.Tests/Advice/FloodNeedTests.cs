using CsCheck;

namespace RackController.Growing.Tests;

public sealed class FloodNeedTests
{
    // FAO-56 Example 36 (from memory): readily available water is p times what the root zone holds; 1000 (FC - WP) mm for each m of roots:
    // onion, p 0.30, 0.4 m in loamy sand of 0.09: 11 mm; tomato, 0.40, 0.8 m in silt of 0.17: 54 mm; wheat, 0.55, 1.5 m in silty clay of
    // 0.12: 99 mm. A litre on a square metre is a millimetre.
    [Theory]
    [InlineData(0.30, 0.4, 90, 11)]
    [InlineData(0.40, 0.8, 170, 54)]
    [InlineData(0.55, 1.5, 120, 99)]
    public void WhatMayGoIsAsInThePublishedExample(double share, double rootsM, double holdsMmPerM, double readilyMm) =>
        Assert.Equal(readilyMm, Some(rootsM * holdsMmPerM, share, refilledShare: 1).AllowedL, 0.5);

    // Hand: 4 L, of which 30 % may go, all refilled: 1.2 L. 16 h of 0.1 and 8 h of 0.05 take 2.0 L: 1.67, so two floods; 12 h apart lit.
    [Fact]
    public void FloodsComeBeforeMoreIsGoneThanMay()
    {
        var need = Some(4, 0.3, refilledShare: 1) with { LitLPerH = 0.1, DarkLPerH = 0.05, LitH = 16 };
        Assert.Equal(2.0, need.DailyL, 9);
        Assert.Equal(2, need.FloodsADay);
        Assert.Equal(12, need.LitIntervalH, 9);
        Assert.Equal(24, need.DarkIntervalH, 9);
    }

    // Played flood by flood, media that lose as much as they may between floods come to rest with just so much missing at the driest.
    [Fact]
    public void MediaThatAreRefilledInPartNeverLoseMoreThanTheyMay() =>
        Gen.Select(Gen.Double[0.5, 20], Gen.Double[0.05, 0.9], Gen.Double[0.2, 1]).Sample((heldL, depleted, refilled) =>
        {
            var need = Some(heldL, depleted, refilled);
            var missingL = 0.0;
            for (var flood = 0; flood < 200; flood++)
            {
                missingL += need.BetweenFloodsL;
                Assert.True(missingL <= need.AllowedL + 1e-9);
                missingL *= 1 - refilled;
            }
        });

    [Fact]
    public void ThirstierCropsNeverNeedFewerFloods() =>
        Gen.Select(Gen.Double[0, 0.5], Gen.Double[0, 0.5], Gen.Double[0, 24]).Sample((litLPerH, moreLPerH, litH) =>
        {
            var need = Some(4, 0.3, 0.8) with { LitLPerH = litLPerH, LitH = litH };
            Assert.True((need with { LitLPerH = litLPerH + moreLPerH }).FloodsADay >= need.FloodsADay);
        });

    private static FloodNeed Some(double heldL, double depletedShare, double refilledShare) => new()
    {
        HeldL = heldL,
        DepletedShare = depletedShare,
        RefilledShare = refilledShare,
        LitLPerH = 0.1,
        DarkLPerH = 0.02,
        LitH = 16,
    };
}
