using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Decisions;

public class FloodOutlookTests
{
    private static readonly RackId north = new(0);

    // All but the pump draws 190 W at 120 V or about 1.8 A; the pump's 45 W on top do not fit any more beside both lights.
    private static Site Tight()
    {
        var site = Sites.OneRack();
        var withoutPumpA = site.Loads.Where(load => load.Kind is LoadKind.Light or LoadKind.Fan or LoadKind.Aerator)
            .Sum(load => load.CurrentA(site.Circuits[0].VoltageV));
        return site with { Circuits = [site.Circuits[0] with { ContinuousLimitA = withoutPumpA + 0.1 }] };
    }

    [Fact]
    public void WhatItSaysWillBeShedIsShedByTheFlood()
    {
        var rig = new Rig(Tight());
        rig.LeapFor(Duration.FromMinutes(20));
        var lit = Lit(rig);
        var outlook = rig.Control.FloodOutlook(north);
        Assert.NotEmpty(outlook.Shed);
        Assert.Empty(outlook.Objections);

        rig.Scan(new FloodNow("Ada", north));
        rig.LeapFor(Duration.FromMinutes(1));

        Assert.Equal(lit.Except(Lit(rig)), outlook.Shed);
    }

    [Fact]
    public void WhereEverythingFitsNothingIsShed()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromMinutes(20));

        var outlook = rig.Control.FloodOutlook(north);

        Assert.Empty(outlook.Shed);
        Assert.Equal(Duration.FromMinutes(10), outlook.PumpRunsFor);
    }

    [Fact]
    public void WhatKeepsThePumpOffIsSaid()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromMinutes(20));
        rig.Scan(new HoldForService("Ada", north, Duration.FromMinutes(5)));
        rig.ScanFor(Duration.FromSeconds(1));

        Assert.Contains(rig.Control.FloodOutlook(north).Objections, words => words.Contains("hands", StringComparison.Ordinal));
        Assert.InRange(rig.Control.Asked(north).HoldLeft!.Value, Duration.FromSeconds(298), Duration.FromSeconds(300));
    }

    [Fact]
    public void AStopAndASkippedFloodAreSaidUntilTheyAreOver()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromMinutes(20));
        Assert.Equal(new RackAsked(false, null, false), rig.Control.Asked(north));

        rig.Scan(new Stop("Ada", null), new SkipNextFlood("Ada", north));
        Assert.Equal(new RackAsked(true, null, true), rig.Control.Asked(north));

        rig.Scan(new Resume("Ada", null));
        rig.LeapFor(Duration.FromDays(1));
        Assert.Equal(new RackAsked(false, null, false), rig.Control.Asked(north));
    }

    private static List<LoadId> Lit(Rig rig) =>
        [.. rig.Site.Loads.Where(load => load.Kind == LoadKind.Light && rig.IsOn(load.Name)).Select(load => load.Id)];
}
