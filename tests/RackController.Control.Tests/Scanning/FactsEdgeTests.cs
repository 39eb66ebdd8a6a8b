using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Scanning;

/// <summary>What facts say at a limit, of doubts, of several sensors at once, and of what was switched.</summary>
public class FactsEdgeTests
{
    private static readonly Site site = Sites.OneRack().WithPumpCurrent().WithContactor();
    private static readonly SensorId current = site.SensorNamed("north/pump current");
    private static readonly SensorId rope = site.SensorNamed("north/leak rope");
    private static readonly SensorId low = site.SensorNamed("north/reservoir low float");
    private static readonly RackId north = new(0);
    private static readonly CircuitId sockets = new(0);
    private static readonly Moment start = new(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
    private readonly Areas areas = new(site);
    private readonly Facts facts;

    public FactsEdgeTests()
    {
        var memory = new MemoryReader(null, start);
        var calendar = new RackDemand(site, north, memory, start, []).Clock;
        facts = new Facts(site, areas, [new RackDesk(site.Racks[0])], new ProofTestLog(site, areas, calendar, memory, start, []), start);
        facts.AskedBy(areas.Of(sockets));
    }

    [Theory]
    [InlineData(1.9, false, true)]
    [InlineData(2, false, false)]
    [InlineData(2.1, true, false)]
    public void AtALimitAValueIsNeitherAboveNorBelow(double value, bool isAbove, bool isBelow)
    {
        var limit = new Limit(current, 2, []);
        facts.Know(current, value);
        Assert.Equal(isAbove, facts.IsAbove(limit));
        Assert.Equal(isBelow, facts.IsBelow(limit));
    }

    [Fact]
    public void AValueMattersOnceItLiesBeyondWhatItWasComparedWith()
    {
        var limit = new Limit(current, 2, []);
        facts.BeginLook(areas.Of(sockets));
        facts.Know(current, 1);
        Assert.False(facts.Matters(current, 9));
        Assert.False(facts.IsAbove(limit));
        Assert.False(facts.Matters(current, 1.9));
        Assert.True(facts.Matters(current, 2.1));

        facts.BeginLook(areas.Of(sockets));
        facts.Know(current, 3);
        Assert.False(facts.IsBelow(limit));
        Assert.False(facts.Matters(current, 2.1));
        Assert.True(facts.Matters(current, 1.9));
        facts.ValueToTell(current);
        Assert.True(facts.Matters(current, 3));

        // On the limit it is no longer below.
        facts.BeginLook(areas.Of(sockets));
        facts.Know(current, 1);
        Assert.True(facts.IsBelow(limit));
        Assert.True(facts.Matters(current, 2));
    }

    [Fact]
    public void WhatIsDoubtedIsUnknownFromWhenTheDoubtIsTaken()
    {
        facts.AskedBy(areas.Of(north));
        facts.Know(rope, 0);
        Assert.True(facts.IsKnown(rope));
        Assert.True(facts.IsOpen(rope));
        facts.Doubt(rope, "has not moved");
        Assert.True(facts.HaveDoubtsMoved);
        Assert.True(facts.IsKnown(rope));
        Assert.True(facts.TakeDoubt(rope));
        Assert.False(facts.TakeDoubt(rope));
        Assert.False(facts.IsKnown(rope));
        Assert.False(facts.IsOpen(rope));
        Assert.False(facts.IsClosed(rope));
        Assert.Equal("has not moved", facts.DoubtAbout(rope));
        Assert.False(facts.TrySample(rope, start.Monotonic, out _));
        Assert.True(facts.TrySampleDoubted(rope, start.Monotonic, out _));

        facts.Doubt(rope, null);
        Assert.True(facts.TakeDoubt(rope));
        Assert.True(facts.IsKnown(rope));
        facts.Forget(rope);
        Assert.False(facts.IsKnown(rope));
    }

    [Fact]
    public void OfSeveralOneThatIsOpenIsEnoughAndOneThatIsUnknownTooMuch()
    {
        facts.AskedBy(areas.Of(north));
        var both = site.Sensors.Where(sensor => sensor.Id == rope || sensor.Id == low).ToArray();
        Assert.False(facts.AnyIsOpen([.. both]));
        Assert.False(facts.AllAreKnown([.. both]));
        facts.Know(both[0].Id, 1);
        facts.Know(both[1].Id, 1);
        Assert.False(facts.AnyIsOpen([.. both]));
        Assert.True(facts.AllAreKnown([.. both]));
        facts.Know(both[1].Id, 0);
        Assert.True(facts.AnyIsOpen([.. both]));
        facts.Forget(both[0].Id);
        Assert.False(facts.AllAreKnown([.. both]));
        Assert.True(facts.AnyIsOpen([.. both]));
    }

    [Fact]
    public void WhatASensorSaidBeforeALoadWasSwitchedIsKept()
    {
        Assert.True(double.IsNaN(facts.ValueBeforeSwitching(current)));
        facts.Know(current, 0.4);
        facts.NoteSwitching(areas.Of(sockets));
        facts.Know(current, 0.7);
        Assert.Equal(0.4, facts.ValueBeforeSwitching(current));
        facts.Forget(current);
        facts.NoteSwitching(areas.Of(sockets));
        Assert.True(double.IsNaN(facts.ValueBeforeSwitching(current)));
    }

    [Fact]
    public void WhatTheScanBeforeCommandedIsKnown()
    {
        var commands = new RelayCommands(site) { [site.LoadNamed("north/pump")] = SwitchState.On };
        commands.SetCut(sockets, true);
        var next = start with { Monotonic = start.Monotonic + Duration.FromSeconds(1) };
        facts.Begin(next, ScanConditions.Good, commands);
        Assert.True(facts.WasOn(site.LoadNamed("north/pump")));
        Assert.True(facts.WasCut(sockets));
        Assert.Equal((next, start), (facts.Now, facts.Before));
        facts.SetShedding(sockets, true);
        Assert.True(facts.IsShedding(sockets));
        Assert.Equal(Flow.Unknown, facts.FlowOf(site.LoadNamed("north/fan")));
        facts.SetFlow(site.LoadNamed("north/fan"), Flow.Flows);
        Assert.Equal(Flow.Flows, facts.FlowOf(site.LoadNamed("north/fan")));
    }

    [Theory]
    [InlineData(1_000, false)]
    [InlineData(1_001, true)]
    public void AScanIsFaultyWhenItIsLaterThanItMayBe(int lateMs, bool isFaulty)
    {
        facts.Begin(start, ScanConditions.Good with { LateBy = Duration.FromMilliseconds(lateMs) }, new RelayCommands(site));
        Assert.Equal(isFaulty, facts.IsScanFaulty);
    }

    [Fact]
    public void AnAgendaKeepsTheEarliestOfWhatIsDue()
    {
        var agenda = new Agenda();
        agenda.Begin(start);
        Assert.Equal((MonotonicTime.Never, MonotonicTime.Never), (agenda.Earliest, agenda.EarliestLook));
        agenda.AddForAnyScan(start.Monotonic + Duration.FromSeconds(5));
        Assert.Equal((MonotonicTime.Never, start.Monotonic + Duration.FromSeconds(5)), (agenda.Earliest, agenda.EarliestLook));
        agenda.Add(start.Monotonic + Duration.FromSeconds(9));
        agenda.Add(start.Monotonic + Duration.FromSeconds(7));
        agenda.Add(start.Monotonic + Duration.FromSeconds(8));
        Assert.Equal(start.Monotonic + Duration.FromSeconds(7), agenda.Earliest);
        Assert.Equal(start.Monotonic + Duration.FromSeconds(5), agenda.EarliestLook);
        agenda.AddNextScan();
        Assert.Equal((start.Monotonic, start.Monotonic), (agenda.Earliest, agenda.EarliestLook));
        agenda.Begin(start);
        Assert.Equal(MonotonicTime.Never, agenda.Earliest);
    }
}
