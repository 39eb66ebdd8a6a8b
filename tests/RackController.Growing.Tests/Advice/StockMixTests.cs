using CsCheck;
using RackController.Model;

namespace RackController.Growing.Tests;

public sealed class StockMixTests
{
    private static readonly Reservoir Tank = new(CapacityL: 120, DepthMm: 400, FloorHeightMm: 0, NormalVolumeL: 100, PumpIntakeMm: 30);

    // Dilution C1 V1 = C2 V2, worked for a 1:100 stock, 10 mL/L: 60 L take 0.6 L of it, or 0.606 L when it is poured on top of 60 L.
    [Fact]
    public void AHundredfoldStockIsDilutedAsInTheWorkedExample()
    {
        var mix = new StockMix(0, 1, 0.1);
        Assert.Equal(600, mix.StockInMl(60), 9);
        Assert.Equal(606, mix.StockOnTopMl(60), 0.1);
    }

    // C1 is 250 times 1 mL in 1 L at 0.25 mS/cm: 250.3 mS/cm with the water's own 0.3.
    [Fact]
    public void MixedTogetherStockAndWaterHaveTheTarget() =>
        Gen.Select(Gen.Double[0, 0.8], Gen.Double[0.8, 3], Gen.Double[0.05, 2], Gen.Double[1, 500]).Sample((tap, target, adds, volumeL) =>
        {
            var mix = new StockMix(tap, target, adds);
            var stockL = mix.StockInMl(volumeL) / 1000;
            var stockMsPerCm = tap + 1000 * adds;
            Assert.Equal(target, (stockMsPerCm * stockL + tap * (volumeL - stockL)) / volumeL, 9);
            var onTopL = mix.StockOnTopMl(volumeL) / 1000;
            Assert.Equal(target, (stockMsPerCm * onTopL + tap * volumeL) / (volumeL + onTopL), 9);
        });

    // 100 L at 1.5 with 40 L let out and 40 L of 0.25 let in: (60 x 1.5 + 40 x 0.25) / 100 = 1.0.
    [Fact]
    public void ASolutionThatIsTooStrongIsThinnedByReplacingSomeOfIt() =>
        Assert.Equal(40, new StockMix(0.25, 1, 0.1).ReplacedL(100, 1.5), 9);

    // 640 mg/L for 1 mS/cm, one of the three scales of meters (from memory): 100 L from 0 to 1 mS/cm hold 64 g.
    [Fact]
    public void DrySaltsFollowTheScaleOfMeters() => Assert.Equal(64, new StockMix(0, 1, 0.1).SaltsG(100), 9);

    [Fact]
    public void TheTableSaysWhatToPourAndHowToCorrect()
    {
        var lines = new StockMix(0.3, 1.2, 0.25).Lines(Tank, 0.8).ToList();
        Assert.Equal("(1.2 - 0.3) mS/cm / 0.25 mS/cm for 1 mL/L = 3.60 mL/L", lines[0]);
        Assert.Contains(
            "fill all 100 L: 3.60 x 100 = 360 mL of stock, made up with water (361 mL on top of it); or 57.6 g of dry salts", lines);
        Assert.Equal("from 0.8 to 1.2 mS/cm: (1.2 - 0.8) / 0.25 x 100 L = 160 mL of stock", lines[^1]);
        Assert.Equal(
            "from 1.5 down to 1.2 mS/cm: 100 L x (1.5 - 1.2) / (1.5 - 0.3) = let out 25 L and fill up with water",
            new StockMix(0.3, 1.2, 0.25).Lines(Tank, 1.5).Last());
    }

    [Fact]
    public void BeyondTheRangeOfTheProportionItSaysSo() =>
        Assert.Contains("far from exact", new StockMix(0.3, 3.5, 0.25).Lines(Tank, null).First(), StringComparison.Ordinal);

    [Fact]
    public void AStockThatIsWeakerThanItsTargetIsImpossible() => Assert.False(new StockMix(0, 2, 0.001).IsPossible);
}
