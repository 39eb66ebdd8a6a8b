using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Scanning;

/// <summary>Whoever looks may ask for what calls it and for nothing else; a question that would be missed is a defect at once.</summary>
public class FactsTests
{
    private static readonly Site site = TwoRacksWithAir();
    private static readonly SensorId ownFloat = site.SensorNamed("rack 1/reservoir low float");
    private static readonly SensorId ownAir = site.SensorNamed("rack 1/air");
    private readonly Areas areas = new(site);
    private readonly Facts facts;

    public FactsTests()
    {
        var start = new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
        var memory = new MemoryReader(null, start);
        var tests = new ProofTestLog(
            site, areas, new RackDemand(site, new RackId(0), memory, start, []).Clock, memory, start, []);
        facts = new Facts(site, areas, [.. site.Racks.Select(rack => new RackDesk(rack))], tests, start);
        facts.AskedBy(areas.Of(new RackId(0)));
        facts.Know(ownAir, 20);
    }

    public static TheoryData<string> WhatStandsElsewhere => new(elsewhere.Keys);

    private static readonly Dictionary<string, Action<Facts>> elsewhere = new()
    {
        ["a sensor of another rack"] = facts => facts.IsKnown(site.SensorNamed("rack 2/reservoir low float")),
        ["a sensor of another rack's circuit"] = facts => facts.IsOpen(site.SensorNamed("sockets 2/supply sense")),
        ["a load of another rack"] = facts => facts.WasOn(site.LoadNamed("rack 2/pump")),
        ["what another rack is about"] = facts => facts.About(new RackId(1)),
        ["a tier of another rack"] = facts => facts.IsTierInUse(new RackId(1), 1),
        ["the desk of another rack"] = facts => facts.Desk(new RackId(1)),
        ["the proof test of a float of another rack"] = facts => facts.IsUnderTest(site.SensorNamed("rack 2/leak rope")),
        ["whether a circuit sheds"] = facts => facts.IsShedding(new CircuitId(0)),
        ["whether a circuit is cut"] = facts => facts.WasCut(new CircuitId(0)),
        ["whether a sensor of another rack is doubted"] = facts => facts.DoubtAbout(site.SensorNamed("rack 2/leak rope")),
        ["when a sensor of another rack was read"] = facts => facts.TakenAt(site.SensorNamed("rack 2/leak rope")),
        ["a sample of a sensor of another rack"] =
            facts => facts.TrySample(site.SensorNamed("rack 2/leak rope"), MonotonicTime.Zero, out _),
        ["what a sensor elsewhere said before a load was switched"] =
            facts => facts.ValueBeforeSwitching(site.SensorNamed("sockets 2/supply sense")),
        ["the current of a load of another rack"] = facts => facts.FlowOf(site.LoadNamed("rack 2/fan")),
    };

    [Theory]
    [MemberData(nameof(WhatStandsElsewhere))]
    public void ARackMayNotAskFor(string what) => Assert.Throws<InvariantBrokenException>(() => elsewhere[what](facts));

    [Fact]
    public void ARackMayAskForItsOwn()
    {
        Assert.False(facts.IsKnown(ownFloat));
        Assert.False(facts.WasOn(site.LoadNamed("rack 1/pump")));
        Assert.Null(facts.Desk(new RackId(0)).HoldEndsAt);
        Assert.True(facts.IsTierInUse(new RackId(0), 1));
    }

    [Fact]
    public void ARackMayAskForTheSensorsOfItsCircuitWhichCallsIt() =>
        Assert.False(facts.IsKnown(site.SensorNamed("sockets 1/supply sense")));

    [Fact]
    public void ACircuitMayAskForItsLoadsOfAnyRack()
    {
        facts.AskedBy(areas.Of(new CircuitId(0)));
        Assert.False(facts.WasOn(site.LoadNamed("rack 1/pump")));
        Assert.False(facts.IsShedding(new CircuitId(0)));
        Assert.Throws<InvariantBrokenException>(() => facts.WasOn(site.LoadNamed("rack 2/pump")));
    }

    [Fact]
    public void AMeasuredValueIsNeverClosedOrOpen()
    {
        Assert.Throws<InvariantBrokenException>(() => facts.IsClosed(ownAir));
        Assert.Throws<InvariantBrokenException>(() => facts.IsOpen(ownAir));
    }

    [Fact]
    public void ALimitNamesItselfAmongTheLevels()
    {
        var levels = new List<SensorLevel>();
        var limit = new Limit(ownAir, 32, levels);
        Assert.Equal([new SensorLevel(ownAir, 32)], levels);
        Assert.False(facts.IsAbove(limit));
        Assert.True(facts.IsBelow(limit));
    }

    [Fact]
    public void ZeroBelowZeroIsToldAsZero()
    {
        facts.Know(ownAir, -0.0);
        Assert.False(double.IsNegative(facts.ValueToTell(ownAir)));
    }

    [Fact]
    public void ASensorThatWatchesARackAndACircuitIsRefused()
    {
        var both = site.Sensors[0] with { Circuit = new CircuitId(0) };
        Assert.Throws<InvariantBrokenException>(() => new Areas(site with { Sensors = site.Sensors.SetItem(0, both) }));
    }

    [Fact]
    public void AnInterlockThatActsOnLoadsElsewhereIsRefused()
    {
        var row = PumpRows.PumpRest with
        {
            Instances = (row, at) => [new HighWater(row, at.Site.Racks[0], at.LoadsOf(at.Site.Racks[1], LoadKind.Pump), [])],
        };
        var misplaced = row.Instances(row, new InterlockSite(site, default, []));
        Assert.Throws<InvariantBrokenException>(() => new InterlockPanel(site, [.. misplaced], areas));
    }

    private static Site TwoRacksWithAir()
    {
        var site = Sites.ManyRacks(racks: 2, racksToACircuit: 1);
        return site with
        {
            Sensors =
            [
                .. site.Sensors,
                site.Sensors[0] with
                {
                    Id = new SensorId(site.Sensors.Length), Name = "rack 1/air", Kind = SensorKind.AirTemperature, PlausibleMax = 60,
                },
            ],
        };
    }
}
