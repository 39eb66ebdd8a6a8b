using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.ProofTests;

/// <summary>The proof test of floats, leak ropes and supply senses.</summary>
public class ContactTestTests
{
    private readonly Rig rig = new(ProofSite.Whole);

    public static TheoryData<string> Contacts =>
        new(ProofSite.Whole.Sensors.Where(sensor => sensor.IsContact).Select(sensor => sensor.Name));

    public ContactTestTests() => rig.ScanFor(Duration.FromMinutes(3));

    [Theory]
    [MemberData(nameof(Contacts))]
    public void AContactThatReadsBothWaysPasses(string contact)
    {
        rig.TestContact(contact);
        Assert.Equal(("passed", "Ada saw it through"), rig.Outcome(contact));
        Assert.NotNull(rig.Test(contact).PassedAt);
        Assert.Null(rig.Control.ProofTestUnderWay());
    }

    [Theory]
    [MemberData(nameof(Contacts))]
    public void AContactThatIsStuckOnItsHarmlessSideFails(string contact)
    {
        rig.Scan(new BeginProofTest("Ada", contact));
        rig.LeapFor(Duration.FromSeconds(61));
        Assert.Equal("failed", rig.Outcome(contact).What);
        Assert.StartsWith("within 1 min this was not to be seen: ", rig.Outcome(contact).Because);
        Assert.True(rig.Test(contact).HasFailed);
    }

    [Theory]
    [MemberData(nameof(Contacts))]
    public void AContactThatIsStuckOnItsHarmfulSideFails(string contact)
    {
        rig.Scan(new BeginProofTest("Ada", contact));
        rig.Move(contact, rig.Sensor(contact).HarmfulValue!.Value);
        Assert.Equal(2, rig.Control.ProofTestUnderWay()!.Step);
        rig.LeapFor(Duration.FromSeconds(61));
        Assert.Equal("failed", rig.Outcome(contact).What);
    }

    [Fact]
    public void ItFailsNoSoonerThanItsStepMayTake()
    {
        rig.Scan(new BeginProofTest("Ada", "north/leak rope"));
        rig.ScanFor(Duration.FromSeconds(59));
        Assert.False(rig.Test("north/leak rope").HasFailed);
        rig.ScanFor(Duration.FromSeconds(2));
        Assert.True(rig.Test("north/leak rope").HasFailed);
    }

    [Fact]
    public void ItIsJudgedOnTimeThoughNobodyScansMeanwhile()
    {
        rig.Scan(new BeginProofTest("Ada", "north/leak rope"));
        rig.Set("north/leak rope", 1);
        rig.Scan();
        rig.LeapFor(ProofTestDesk.Hold + Duration.FromSeconds(1));
        Assert.Equal(2, rig.Control.ProofTestUnderWay()!.Step);
        rig.LeapFor(Duration.FromSeconds(55));
        Assert.False(rig.Test("north/leak rope").HasFailed);
        rig.LeapFor(Duration.FromSeconds(5));
        Assert.True(rig.Test("north/leak rope").HasFailed);
    }

    [Fact]
    public void AContactThatChattersIsNotTakenForOneThatIsWell()
    {
        rig.Scan(new BeginProofTest("Ada", "north/leak rope"));
        for (var half = 0; half < 12; half++)
        {
            rig.Set("north/leak rope", 1);
            rig.ScanFor(ProofTestDesk.Hold + Duration.FromMilliseconds(-500));
            rig.Set("north/leak rope", 0);
            rig.ScanFor(Duration.FromSeconds(3));
        }

        Assert.Equal("failed", rig.Outcome("north/leak rope").What);
    }

    [Fact]
    public void AContactThatNobodyCanReadFails()
    {
        rig.Silence("north/leak rope");
        rig.Scan(new BeginProofTest("Ada", "north/leak rope"));
        rig.LeapFor(Duration.FromSeconds(61));
        Assert.True(rig.Test("north/leak rope").HasFailed);
    }

    [Theory]
    [InlineData("north/reservoir low float", 0, "low-float")]
    [InlineData("north/tier 2 high float", 1, "high-water")]
    [InlineData("north/leak rope", 1, "high-water")]
    public void WhileItIsMovedItsInterlockForbidsThePump(string contact, double harmful, string row)
    {
        rig.Scan(new BeginProofTest("Ada", contact));
        rig.Set(contact, harmful);
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Contains(rig.Why("north/pump").Interlocks, words => words.StartsWith(row, StringComparison.Ordinal));
    }

    [Fact]
    public void WhatActedInATestComesBackAsAlways()
    {
        rig.TestContact("north/leak rope");
        rig.LeapFor(Duration.FromDays(1));
        Assert.Contains(rig.Why("north/pump").Interlocks, words => words.StartsWith("high-water", StringComparison.Ordinal));

        rig.Reset("north/high-water");
        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    [Theory]
    [InlineData("north/reservoir low float", "low-float")]
    [InlineData("north/tier 1 high float", "high-water")]
    [InlineData("north/tier 2 high float", "high-water")]
    [InlineData("north/leak rope", "high-water")]
    [InlineData("sockets/supply sense", "supply-lost")]
    [InlineData("north/tier 1 full float", "")]
    public void TheRowThatGoesByAContactMustActInItsTest(string contact, string row)
    {
        var interlocks = CauseAndEffectTable.Build(new InterlockSite(rig.Site, rig.Now, []));
        Assert.Equal(
            row, string.Join(", ", interlocks.Where(each => each.ActsOn(rig.Sensor(contact).Id)).Select(each => each.Row.Id)));
    }

    [Fact]
    public void AnInterlockThatDoesNotActFailsTheTest()
    {
        var start = new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
        var site = ProofSite.Whole;
        var (areas, memory) = (new Areas(site), new MemoryReader(null, start));
        var log = new ProofTestLog(site, areas, new RackDemand(site, new RackId(0), memory, start, []).Clock, memory, start, []);
        var desk = new ProofTestDesk(log, areas, [new Idle(site)]);
        var facts = new Facts(site, areas, [], log, start);
        var attention = new Attention(areas);
        desk.Begin("north/leak rope", "Ada", start, rig);
        facts.Know(site.SensorNamed("north/leak rope"), 1);
        for (var second = 0; second <= 60; second++)
        {
            var now = start with { Monotonic = MonotonicTime.FromMilliseconds(1_000 * second) };
            facts.Begin(now, ScanConditions.Good, new RelayCommands(site));
            attention.CallAll();
            attention.Gather(now);
            desk.Look(attention, facts, rig);
        }

        Assert.Equal("failed", rig.Outcome("north/leak rope").What);
    }

    [Theory]
    [InlineData("north/reservoir low float", ProofTestKind.FloatSwitch, 10)]
    [InlineData("north/leak rope", ProofTestKind.LeakRope, 20)]
    [InlineData("sockets/supply sense", ProofTestKind.SupplySense, 30)]
    public void EachKindHasItsInterval(string contact, ProofTestKind kind, int days)
    {
        var other = new Rig(ProofSite.Whole.WithLimits(limits => limits with
        {
            FloatTestInterval = Duration.FromDays(10),
            LeakRopeTestInterval = Duration.FromDays(20),
            SupplySenseTestInterval = Duration.FromDays(30),
        }));
        Assert.Equal((kind, Duration.FromDays(days)), (other.Test(contact).Kind, other.Test(contact).Interval));
    }

    /// <summary>Should act on every contact of its rack, and never does.</summary>
    private sealed class Idle(Site site) : Interlock(ProofRows.ProofTestFailed, Place.Of(site.Racks[0]), [])
    {
        public override bool ActsOn(SensorId contact) => true;

        public override string Words(ClockFace clock) => "it never acts";

        protected override bool IsPresent(Facts facts, Agenda agenda) => false;
    }
}
