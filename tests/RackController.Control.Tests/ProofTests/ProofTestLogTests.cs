using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.ProofTests;

/// <summary>When a proof test is due.</summary>
public class ProofTestLogTests
{
    private const string Rope = "north/leak rope";
    private const string Light = "north/tier 1 light";
    private readonly Rig rig = new(ProofSite.Whole);

    [Fact]
    public void WhatWasNeverTestedIsDueATimeAfterItWentIntoService()
    {
        Assert.Equal(rig.Now.Wall + Duration.FromDays(14), rig.Test(Rope).DueAt);
        Assert.False(rig.Test(Rope).IsOverdue);
        rig.LeapFor(Duration.FromDays(14));
        Assert.True(rig.Test(Rope).IsOverdue);
    }

    [Fact]
    public void AnIntervalThatIsShorterCountsFromTheStart()
    {
        var other = new Rig(ProofSite.Whole.WithLimits(limits => limits with { LeakRopeTestInterval = Duration.FromDays(2) }));
        Assert.Equal(other.Now.Wall + Duration.FromDays(2), other.Test(Rope).DueAt);
    }

    [Fact]
    public void OfRacksThatAllowDifferentTimesForTheFirstTestTheShortestCounts()
    {
        var site = Sites.ManyRacks(racks: 2, racksToACircuit: 2)
            .WithLimits(limits => limits with { FirstTestWithin = Duration.FromDays(3) });
        var other = new Rig(site);
        Assert.Equal(other.Now.Wall + Duration.FromDays(3), other.Test("rack 2/leak rope").DueAt);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void AWrongClockDoesNotMakeANewRackOverdue(bool isSetRight)
    {
        var other = new Rig(ProofSite.Whole, start: Instant.FromUtc(1970, 1, 1, 0, 0));
        other.TrustWall(false);
        other.ScanFor(Duration.FromSeconds(10));
        other.StepWall(isSetRight ? Duration.FromDays(20_000) : Duration.Zero);
        other.TrustWall(isSetRight);
        other.LeapFor(Duration.FromDays(13));
        Assert.False(other.Test(Rope).IsOverdue);
        other.LeapFor(Duration.FromDays(1));
        Assert.True(other.Test(Rope).IsOverdue);
    }

    [Fact]
    public void WhatWasPassedIsDueAnIntervalLaterByTheCalendar()
    {
        rig.ScanFor(Duration.FromMinutes(3));
        rig.TestContact(Rope);
        var passedAt = rig.Test(Rope).PassedAt!.Value;
        Assert.True(passedAt > rig.Now.Wall + Duration.FromSeconds(-10) && passedAt <= rig.Now.Wall);
        Assert.Equal(passedAt + Duration.FromDays(90), rig.Test(Rope).DueAt);

        rig.Restart(Duration.FromDays(89));
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.False(rig.Test(Rope).IsOverdue);
        rig.LeapFor(Duration.FromDays(1));
        Assert.True(rig.Test(Rope).IsOverdue);
        rig.TestContact(Rope);
        Assert.False(rig.Test(Rope).IsOverdue);
    }

    [Fact]
    public void AwayWithoutAClockItIsOverdueOnceTheTimeIsKnownAgain()
    {
        rig.ScanFor(Duration.FromMinutes(3));
        rig.TestContact(Rope);
        rig.Restart(Duration.FromDays(100), wallTrusted: false);
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.False(rig.Test(Rope).IsOverdue);
        rig.TrustWall(true);
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.True(rig.Test(Rope).IsOverdue);
    }

    [Fact]
    public void ThatADateIsPutRightIsRemembered()
    {
        var site = ProofSite.Whole;
        var now = rig.Now;
        var written = new MemoryWriter(now, expected: 0);
        written.Put($"{Rope}/proof-test/passed at", now.Wall + Duration.FromDays(1_000));
        var memory = new MemoryReader(written.ToMemory(), now);
        var log = new ProofTestLog(site, new Areas(site), new RackDemand(site, new RackId(0), memory, now, []).Clock, memory, now, []);
        log.PutRight(now.Monotonic);
        Assert.Equal(1, log.MemoryVersion);
        Assert.Equal(now.Wall, log.Status(now.Monotonic).Single(each => each.Item == Rope).PassedAt);
        log.PutRight(now.Monotonic);
        Assert.Equal(1, log.MemoryVersion);
    }

    [Fact]
    public void ADateThatAWrongClockWroteIsPutRight()
    {
        rig.StepWall(Duration.FromDays(1_000));
        rig.ScanFor(Duration.FromMinutes(3));
        rig.TestContact(Rope);
        var version = rig.Control.MemoryVersion;
        rig.StepWall(Duration.FromDays(-1_000));
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.True(rig.Test(Rope).DueAt <= rig.Now.Wall + Duration.FromDays(90));
        Assert.True(rig.Control.MemoryVersion > version);
        rig.LeapFor(Duration.FromDays(91));
        Assert.True(rig.Test(Rope).IsOverdue);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ThatATestWasPassedOrFailedIsSavedAtOnce(bool passes)
    {
        rig.LeapFor(Duration.FromMinutes(3));
        rig.Scan(new BeginProofTest("Ada", Light));
        rig.ScanFor(Duration.FromSeconds(7));
        rig.Scan(new AnswerProofTest("Ada", AsExpected: true));
        rig.ScanFor(Duration.FromSeconds(7));
        var version = rig.Control.MemoryVersion;
        rig.Scan(new AnswerProofTest("Ada", passes));
        Assert.Equal(passes ? "passed" : "failed", rig.Outcome(Light).What);
        Assert.True(rig.Control.MemoryVersion > version);
    }

    [Fact]
    public void WhatIsUntestedTakesNoRoomInMemory() => Assert.Equal(
        ["proof-tests/in service age"], rig.Control.Save().Items.Keys.Where(key => key.Contains("proof-test", StringComparison.Ordinal)
            && !key.EndsWith("/latched", StringComparison.Ordinal)));
}
