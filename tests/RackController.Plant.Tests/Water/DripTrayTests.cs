using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests.Water;

/// <summary>What is spilled lies in the drip tray first, and the rest on the floor; no millilitre of it is lost.</summary>
public sealed class DripTrayTests
{
    private static readonly RackId north = new(0);

    [Fact]
    public void WhatADripTrayHoldsIsNotOnTheFloor()
    {
        var rack = With(new DripTray(CapacityL: 12, DepthMm: 60));
        Overfill(rack, 10);
        Assert.Equal((10.0, 0.0, 0.0), Rounded(rack));
        Assert.Equal(50, rack.Truth.Value(RackQuantity.DripTrayDepth, null), 1e-9);

        Overfill(rack, 5);
        Assert.Equal((12.0, 3.0, 3.0), Rounded(rack));
        Assert.Equal(60, rack.Truth.Value(RackQuantity.DripTrayDepth, null), 1e-9);
    }

    [Fact]
    public void AMopTakesBothAndTheNextSpillBeginsInTheTrayAgain()
    {
        var rack = With(new DripTray(CapacityL: 12, DepthMm: 60));
        var before = rack.Truth.BalanceL;
        Overfill(rack, 15);
        rack.Inject(FaultKind.FloorMopped, 1, fault => fault with { Rack = north });
        Assert.Equal((0.0, 0.0, 3.0), Rounded(rack));
        Overfill(rack, 11);
        Assert.Equal((11.0, 0.0, 3.0), Rounded(rack));
        Overfill(rack, 3);
        Assert.Equal((12.0, 2.0, 5.0), Rounded(rack));
        Assert.Equal(29, rack.Truth.SpilledL, 1e-9);
        Assert.Equal(before, rack.Truth.BalanceL, 1e-9);
    }

    [Fact]
    public void WithoutADripTrayEveryDropIsOnTheFloor()
    {
        var rack = With(null);
        Overfill(rack, 2);
        Assert.Equal((0.0, 2.0, 2.0), Rounded(rack));
        Assert.Equal(0, rack.Truth.Value(RackQuantity.DripTrayDepth, null));
    }

    /// <summary>Straight walls: 12 L and 60 mm, so 15 mm are 3 L.</summary>
    [Fact]
    public void TheFloatOfADripTraySwitchesAtItsHeightToTheNanosecondAndDriesWithTheMop()
    {
        var rack = With(new DripTray(CapacityL: 12, DepthMm: 60));
        rack.Inject(FaultKind.TrayLeak, 1e6, fault => fault with { Rack = north, TierNumber = 1, Size = 1 });
        rack.Flood();
        while (rack.Reading("north/drip tray float").Value == 0)
        {
            rack.Plant.AdvanceToNews(rack.After(3600));
        }

        Assert.Equal(3, rack.Truth.SpilledL, 1e-9);
        Assert.Equal(1, rack.Reading("north/leak rope").Value);
        rack.Inject(FaultKind.FloorMopped, 1, fault => fault with { Rack = north });
        Assert.Equal(0, rack.Reading("north/drip tray float").Value);
        Assert.Equal(0, rack.Reading("north/leak rope").Value);
    }

    /// <summary>A rack file refuses one; a rack that was made otherwise must not stand still for it.</summary>
    [Fact]
    public void AFloatThatHangsInNoDripTrayStaysDryAndHoldsNobodyUp()
    {
        var rack = With(null);
        rack.Inject(FaultKind.TrayLeak, 1e6, fault => fault with { Rack = north, TierNumber = 1, Size = 1 });
        rack.Flood();
        var end = rack.After(1800);
        for (var news = 0; rack.Plant.Reached < end; news++)
        {
            rack.Plant.AdvanceToNews(end);
            Assert.InRange(news, 0, 10_000);
        }

        Assert.True(rack.Truth.SpilledL > 1);
        Assert.Equal(0, rack.Reading("north/drip tray float").Value);
    }

    [Fact]
    public void TheFirstDropBeyondTheDripTrayIsNewsToWhoeverWatchesForIt()
    {
        var rack = With(new DripTray(CapacityL: 1, DepthMm: 60));
        rack.Plant.Watch(north, RackQuantity.OntoFloor, null, 0.25);
        rack.Inject(FaultKind.TrayLeak, 1e6, fault => fault with { Rack = north, TierNumber = 1, Size = 1 });
        rack.Flood();
        while (rack.Truth.OntoFloorL < 0.2)
        {
            rack.Plant.AdvanceToNews(rack.After(3600));
        }

        Assert.Equal(0.25, rack.Truth.OntoFloorL, 1e-9);
    }

    /// <summary>The pump goes on giving what it gives, and half of it never reaches the trays; once it stands, the pipes empty
    /// too.</summary>
    [Fact]
    public void ALooseHoseSpillsItsShareOfThePumpAndThenThePipes()
    {
        var (whole, loose) = (With(new DripTray(100, 100)), With(new DripTray(100, 100)));
        var pipesL = loose.Truth.PipesL;
        loose.Inject(FaultKind.HoseLoose, 1e6, fault => fault with { Rack = north, Size = 0.5 });
        Assert.Equal(pipesL, loose.Truth.DripTrayL, 1e-9);
        foreach (var rack in new[] { whole, loose })
        {
            rack.Flood();
            rack.To(30);
        }

        Assert.Equal(whole.Truth.PumpedL, loose.Truth.PumpedL, 0.02 * whole.Truth.PumpedL);
        Assert.Equal(pipesL + loose.Truth.PumpedL / 2, loose.Truth.DripTrayL, 1e-6);
        var before = (Balance: loose.Truth.BalanceL, loose.Truth.DripTrayL, Salts: loose.Truth.SaltBalanceG);
        loose.Stop();
        Assert.True(pipesL > 0.1);
        Assert.Equal(before.DripTrayL + pipesL, loose.Truth.DripTrayL, 1e-9);
        Assert.Equal(before.Balance, loose.Truth.BalanceL, 1e-9);
        Assert.Equal(before.Salts, loose.Truth.SaltBalanceG, 1e-6);
    }

    private static TestSite With(DripTray? tray)
    {
        var site = Sites.OneRack(1).WithRack(rack => rack with { DripTray = tray });
        return new TestSite(1, site: site with
        {
            Sensors =
            [
                .. site.Sensors,
                site.Sensors[0] with
                {
                    Id = new SensorId(site.Sensors.Length), Name = "north/drip tray float", Kind = SensorKind.DripTrayFloat,
                    HeightMm = 15,
                },
            ],
        });
    }

    // The tank of the test rack holds 160 L; a bucket comes when it is full.
    private static void Overfill(TestSite rack, double litres) => rack.Inject(
        FaultKind.ReservoirRefilled, 1, fault => fault with { Rack = north, Size = litres + 160 - rack.Truth.ReservoirVolumeL });

    private static (double InTrayL, double OnFloorL, double OntoFloorL) Rounded(TestSite rack) =>
        (Math.Round(rack.Truth.DripTrayL, 9), Math.Round(rack.Truth.OnFloorL, 9), Math.Round(rack.Truth.OntoFloorL, 9));
}
