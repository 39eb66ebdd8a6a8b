using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Growing.Tests;

public sealed class CircuitHeadroomTests
{
    // Nameplates of the test site on 120 V with a power factor of 1: pump 45 W, aerator 5, fan 12, two lights of 80, two valves of 6:
    // 234 W, 1.95 A. NEC 210.20(A), as quoted in a data bulletin of a breaker maker: a 15 A circuit carries 12 A for hours.
    [Fact]
    public void AllThatRunsInTheMorningsFloodIsCounted()
    {
        var headroom = Of(Sites.OneRack());
        Assert.Equal(1.95, headroom.TogetherA, 9);
        Assert.Equal(10.05, headroom.LeftA, 9);
        Assert.Equal(Duration.FromHours(7), headroom.At);
    }

    [Fact]
    public void LightsThatTakeTurnsAreNotAddedUp()
    {
        Photoperiod[] turns = [new(new LocalTime(0, 0), Duration.FromHours(12)), new(new LocalTime(12, 0), Duration.FromHours(12))];
        var site = Sites.OneRack().WithSchedule(schedule => schedule with { Lights = [.. turns] });
        Assert.Single(Of(site).Together, load => load.Kind == LoadKind.Light);
    }

    [Fact]
    public void ALightThatIsOnOverMidnightIsOnInTheMorning()
    {
        var late = new Photoperiod(new LocalTime(20, 0), Duration.FromHours(12));
        var site = Sites.OneRack().WithSchedule(schedule => schedule with { Lights = [late, late] });
        Assert.Equal(2, Of(site).Together.Count(load => load.Kind == LoadKind.Light));
        Assert.Contains(Of(site).At, (Duration[])[Duration.FromHours(7), Duration.FromHours(20)]);
    }

    [Fact]
    public void ATierOutOfUseDrawsNothing()
    {
        var site = Sites.OneRack().WithRack(rack => rack with { Tiers = rack.Tiers.SetItem(1, rack.Tiers[1] with { InUse = false }) });
        Assert.DoesNotContain(Of(site).Together, load => load.TierNumber == 2);
    }

    // 80 W at 120 V is 0.67 A: fifteen of them fit into 10.05 A, and 11 A do not.
    [Fact]
    public void WhatElseFitsIsSaidWithItsNumbers()
    {
        var lines = Of(Sites.OneRack()).Lines(11).ToList();
        Assert.Contains("left: 12 - 1.95 = 10.05 A", lines);
        Assert.Contains("that is 15 more lights like north/tier 1 light, 0.67 A each", lines);
        Assert.Contains("with 11 A more: 12.95 A, 108 % of what it may carry: it does not fit; put it on another circuit", lines);
    }

    [Fact]
    public void ACircuitWithNothingOnItSaysSo()
    {
        var site = Sites.OneRack();
        Assert.Equal("nothing on it runs", CircuitHeadroom.Of(site with { Loads = [] }, site.Circuits[0]).Lines(null).Last());
    }

    private static CircuitHeadroom Of(Site site) => CircuitHeadroom.Of(site, site.Circuits[0]);
}
