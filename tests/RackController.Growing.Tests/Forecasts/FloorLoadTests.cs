using RackController.Model;
using RackController.Testing;

namespace RackController.Growing.Tests;

public sealed class FloorLoadTests
{
    // IRC table R301.5 prints 40 psf, and 1.92 kPa beside it, for rooms other than sleeping rooms (as read at docslib.org/doc/1214111).
    [Fact]
    public void TheLoadOfADwellingIsAsTheCodePrintsItInBothUnits() => Assert.Equal(1.92, FloorLoad.DwellingKPa, 0.005);

    // Arithmetic with 5.20 psf for an inch of water: five trays of 44 x 25 in with 1.75 in in each, 69.4 lb, put 45.4 psf on the floor
    // below.
    [Fact]
    public void FiveFloodedTraysOverOneFootprintPutTheirWaterOnIt()
    {
        const double kgPerLb = 0.45359237;
        var floor = new FloorLoad(0, 5 * 69.4 * kgPerLb, 44 * 25 * 0.0254 * 0.0254, 4, IsGuessed: false);
        Assert.Equal(45.4, floor.LoadedPsf, 0.05);
        Assert.True(floor.IsMoreThanADwelling);
    }

    // 9.80665 N for each kg, by definition: 408 kg on 2 m2 are 2.0005 kN/m2, and 102 kg on each of four wheels.
    [Fact]
    public void ALoadedRackIsItsFrameItsWaterAndItsTrays()
    {
        var rack = Sites.OneRack().Racks[0] with { Stand = new RackStand(100, 2000, 1000, 4) };
        var floor = FloorLoad.Of(rack, trayKg: 21);
        Assert.Equal(100 + 140 + 8 * 21, floor.LoadedKg, 9);
        Assert.Equal(2.0005, floor.LoadedKPa, 0.0001);
        Assert.Equal(0.4903, floor.EmptyKPa, 0.0001);
        Assert.Equal(102, floor.PerWheelKg, 9);
        Assert.False(floor.IsGuessed);
    }

    [Fact]
    public void ARackThatSaysNothingIsGuessedFromItsTiersAndItsWidestTray()
    {
        var floor = FloorLoad.Of(Sites.OneRack().Racks[0], trayKg: 3);
        Assert.True(floor.IsGuessed);
        Assert.Equal(1.12 * 0.64, floor.AreaM2, 9);
    }
}
