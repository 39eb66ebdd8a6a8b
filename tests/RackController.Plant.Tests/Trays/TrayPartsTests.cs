using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class TrayPartsTests
{
    private const double Lpm = 60_000;

    [Theory]
    // A tray of 44 x 25 in, 1.75 in deep, through a hole of 1/2 in and 3/8 in, Cd 0.62: t = 2 A sqrt(h) / (Cd a sqrt(2 g)), closed form.
    [InlineData(12.7, 860.3)]
    [InlineData(9.525, 1529.5)]
    public void AWeepEmptiesATrayInTheTimeOfTheClosedForm(double boreMm, double seconds)
    {
        var weep = new Weep(boreMm / 1000);
        const double AreaM2 = 44 * 25 * 0.0254 * 0.0254;
        const double StartM = 1.75 * 0.0254;
        var emptying = 2 * AreaM2 * StartM / weep.Flow(StartM);
        Assert.Equal(seconds, emptying, 0.05);
    }

    // First order in what is missing, with 300 s: 1 - e^-1 after 5 min, and after twice as long its square is left (closed form).
    [Fact]
    public void MediaRefillAsTheClosedFormHasIt()
    {
        var missing = 1 - MediaStore.RefilledShare(NodaTime.Duration.FromMinutes(5));
        Assert.Equal(Math.Exp(-1), missing, 12);
        Assert.Equal(missing * missing, 1 - MediaStore.RefilledShare(NodaTime.Duration.FromMinutes(10)), 12);
    }

    [Fact]
    public void TheLastFilmRunsOffWithoutAJump()
    {
        var weep = new Weep(0.0095);
        Assert.Equal(weep.Flow(0.99999e-5), weep.Flow(1.00001e-5), 1e-10);
        Assert.Equal(0, weep.Flow(0));
    }

    [Fact]
    public void AStandpipeIsAWeirUntilItIsAnOrifice()
    {
        // D 26.6 mm, C 1.7, Cd 0.6: they cross at Cd D sqrt(2 g) / (4 C) = 10.394 mm; 10 mm over the mouth gives 8.524 as a weir and
        // would give 8.860 L/min as an orifice. Closed forms.
        var standpipe = new Standpipe(0.0445, 0.0266);
        Assert.Equal(0, standpipe.Flow(0.0445));
        Assert.Equal(8.524, standpipe.Flow(0.0545) * Lpm, 0.001);
        Assert.Equal(8.860 * Math.Sqrt(2), standpipe.Flow(0.0645) * Lpm, 0.002);
        const double CrossM = 0.010394;
        Assert.Equal(Math.Pow(0.9, 1.5), standpipe.Flow(0.0445 + 0.9 * CrossM) / standpipe.Flow(0.0445 + CrossM), 1e-4);
        Assert.Equal(Math.Pow(1.1, 0.5), standpipe.Flow(0.0445 + 1.1 * CrossM) / standpipe.Flow(0.0445 + CrossM), 1e-4);
    }

    [Fact]
    public void TheHighestTrayIsServedFirstInWhateverOrderTheyStandOnTheRiser()
    {
        var rack = Sites.OneRack(3).Racks[0];
        rack = rack with
        {
            Drain = new DrainStack(40, 6),
            Tiers =
            [
                rack.Tiers[0] with { TrayFloorHeightMm = 900 },
                rack.Tiers[1] with { TrayFloorHeightMm = 500 },
                rack.Tiers[2] with { TrayFloorHeightMm = 700 },
            ],
        };
        var drains = new[] { 4 / Lpm, 4 / Lpm, 4 / Lpm };

        new ReturnStack(rack).Share(drains, openShare: 1);

        Assert.Equal([4, 0, 2], drains.Select(flow => Math.Round(flow * Lpm, 9)));
    }

    [Fact]
    public void WhatStandsInATrayRaisesItsWater()
    {
        var basin = new TrayBasin(new FloodTray(1000, 500, 85, 45, 26.6, 9.5, new TrayContents(4, "coir", 0.2, 40)));
        Assert.Equal(0.040, basin.DepthM(0.016), 1e-12);
        Assert.Equal(0.050, basin.DepthM(0.016 + 0.005), 1e-12);
        Assert.Equal(0.010, basin.DepthM(0.004), 1e-12);
        Assert.Equal(0, basin.DepthM(-0.001));
    }

    [Fact]
    public void ATrayRunsOverItsEdgeOnlyAboveIt()
    {
        var basin = new TrayBasin(new FloodTray(1120, 640, 85, 45, 26.6, 9.5, new TrayContents(0, "none", 0, 0)));
        Assert.Equal(0, basin.OverEdge(0.085));
        // 1.7 x 3.52 m x (1 mm)^1.5 = 11.35 L/min, closed form.
        Assert.Equal(11.35, basin.OverEdge(0.086) * Lpm, 0.01);
    }
}
