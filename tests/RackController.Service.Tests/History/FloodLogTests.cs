using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class FloodLogTests
{
    private static readonly Instant noon = Happenings.Noon;
    private static readonly Site site = WithSensors(Sites.OneRack());
    private static readonly Rack rack = site.Racks[0];

    [Fact]
    public void AFloodIsToldWithItsTimesAndWhyItWas()
    {
        var flood = Assert.Single(Log([
            At(-5, FloodEvent.Due, "the schedule floods at 12:00"), At(0, FloodEvent.Filling), At(300, FloodEvent.Soaking),
            At(600, FloodEvent.Draining), At(1800, FloodEvent.Drained),
        ]));

        Assert.Equal((noon, "the schedule floods at 12:00", null), (flood.At, flood.Why, flood.CutShort));
        Assert.Equal((Duration.FromMinutes(5), Duration.FromMinutes(5)), (flood.Fill, flood.Soak));
    }

    [Fact]
    public void WhatCutAFloodShortIsToldAndItsFillIsNoFill()
    {
        var floods = Log([
            At(0, FloodEvent.Filling), At(60, FloodEvent.CutShort, "the pump was told off while filling"), At(60, FloodEvent.Draining),
            At(2000, FloodEvent.Filling),
        ]);

        Assert.Equal(["the pump was told off while filling", null], floods.Select(flood => flood.CutShort));
        Assert.Null(floods[0].Fill);
    }

    [Fact]
    public void AFloatTellsHowFastItsTierFillsAndDrains()
    {
        var floods = Log(
            [At(0, FloodEvent.Filling), At(300, FloodEvent.Soaking), At(600, FloodEvent.Draining), At(1800, FloodEvent.Drained)],
            Said("float", -10, 0), Said("float", 212, 1), Said("float", 640, 0));

        var tier = Assert.Single(Assert.Single(floods).Tiers);
        Assert.Equal((Duration.FromSeconds(212), Duration.FromSeconds(40)), (tier.FullAfter, tier.EmptyAfter));
    }

    // By hand: 300 mm less 220 mm is 80 mm, over the area of the reservoir: 1 L over 1 m2 is 1 mm.
    [Fact]
    public void TheReservoirTellsHowMuchWaterItTook()
    {
        var floods = Log(
            [At(0, FloodEvent.Filling), At(300, FloodEvent.Soaking), At(600, FloodEvent.Draining), At(1800, FloodEvent.Drained)],
            Said("level", -40, 300), Said("level", 20, 290), Said("level", 320, 220), Said("level", 590, 235), Said("level", 1700, 299));

        Assert.Equal(80 * rack.Reservoir.AreaM2, Assert.Single(floods).VolumeL!.Value, 9);
    }

    [Fact]
    public void WhereNoSensorTellsItSaysWhatWould()
    {
        var blind = Sites.OneRack() with { Sensors = [] };

        Assert.Collection(
            new FloodLog(blind, blind.Racks[0]).Lacking(),
            line => Assert.StartsWith("No tier has a float", line, StringComparison.Ordinal),
            line => Assert.StartsWith("The reservoir has no level sensor", line, StringComparison.Ordinal));
    }

    private static System.Collections.Immutable.ImmutableArray<FloodRecord> Log(ControlEvent[] events, params Sample[] samples) =>
        new FloodLog(site, rack).Of(events, samples);

    private static ControlEvent At(int second, string what, string because = "of a test") =>
        MadeUpJournal.Event(noon + Duration.FromSeconds(second), EventKind.Flood, "north", what, because);

    private static Sample Said(string sensor, int second, double value) => new(noon + Duration.FromSeconds(second), sensor, value);

    private static Site WithSensors(Site plain)
    {
        var like = plain.Sensors[0];
        return plain with
        {
            Sensors =
            [
                like with { Name = "float", Kind = SensorKind.TrayFullFloat, Rack = new RackId(0), TierNumber = 1 },
                like with { Name = "level", Kind = SensorKind.ReservoirLevel, Rack = new RackId(0), TierNumber = null },
            ],
        };
    }
}
