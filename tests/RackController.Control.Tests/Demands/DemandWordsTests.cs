using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>What is said of each load through a flood at 07:00 in New York.</summary>
public class DemandWordsTests
{
    private static readonly Instant Seven = Instant.FromUtc(2026, 6, 1, 11, 0);

    [Theory]
    [InlineData(-70, "north/tier 2 light", "the schedule keeps tier 2 dark until 06:00")]
    [InlineData(-10, "north/tier 2 light", "the schedule lights tier 2 until 22:00")]
    [InlineData(-10, "north/pump", "no flood is due until 07:00")]
    [InlineData(-10, "north/fan", "it runs always")]
    [InlineData(1, "north/pump", "a flood fills the trays until 07:05")]
    [InlineData(6, "north/tier 1 valve", "the water is held at depth until 07:10")]
    [InlineData(11, "north/tier 1 valve", "the trays drain until 07:25")]
    [InlineData(30, "north/pump", "no flood is due until 13:00")]
    public void ALoadSaysWhyAndUntilWhen(int minutes, string load, string words)
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(80));
        rig.RunUntil(Seven + Duration.FromMinutes(minutes));
        Assert.Equal(words, Words(rig, load));
    }

    [Fact]
    public void AFloodThatWaitsSaysSinceWhen()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(1)) { PumpMayRun = _ => false };
        rig.RunUntil(Seven);
        Assert.Equal("the flood of 07:00 is due, and the valves open first", Words(rig, "north/pump"));
        rig.Run(Duration.FromMinutes(5));
        Assert.Equal("the flood of 07:00 is due", Words(rig, "north/pump"));
        Assert.Equal("the flood of 07:00 is due, and valves open before the pump starts", Words(rig, "north/tier 1 valve"));
    }

    [Fact]
    public void WithoutAClockTheWordsSayThatTheTimeIsNotSure()
    {
        var rig = new DemandRig(Sites.OneRack(), Instant.FromUtc(2000, 1, 1, 0, 0), trusted: false);
        rig.Scan();
        Assert.Equal(
            "the schedule lights tier 1 until about 22:00, as the time is not sure", Words(rig, "north/tier 1 light"));
    }

    [Fact]
    public void ATierOutOfUseSaysSo()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven);
        rig.Demand.TrySetTierInUse(2, false, out _);
        rig.Scan();
        Assert.Equal("tier 2 is out of use", Words(rig, "north/tier 2 light"));
    }

    [Fact]
    public void ACauseThatHasNoWordsIsADefect()
    {
        var site = Sites.OneRack();
        var rig = new DemandRig(site, Seven);
        var clock = new ScheduleClock("clock", new MemoryReader(null, rig.Now), rig.Now, () => Seven);
        var broken = Assert.Throws<InvariantBrokenException>(() => DemandWords.Of(
            Demand.On((DemandCause)99), site.Loads[0], null, site, clock, rig.Now.Monotonic, rig.Now.Monotonic));
        Assert.Contains("99", broken.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryCauseHasWords()
    {
        var site = Sites.OneRack();
        var rig = new DemandRig(site, Seven);
        rig.Scan();
        var fan = new RunByReading(rig.Id("north/fan"), site.Sensors[0].Id, 25, 22);
        var words = Enum.GetValues<DemandCause>()
            .Select(cause => DemandWords.Of(
                Demand.On(cause), site[rig.Id("north/tier 1 light")], fan, site,
                new ScheduleClock("clock", new MemoryReader(null, rig.Now), rig.Now, () => Seven), rig.Now.Monotonic, rig.Now.Monotonic))
            .ToList();
        Assert.DoesNotContain(words, string.IsNullOrWhiteSpace);
        Assert.Equal(words.Count, words.Distinct().Count());
    }

    [Fact]
    public void WhatComesNextNamesLightsAndTheFloodThatReallyRuns()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(10));
        rig.Scan();
        rig.Demand.TrySkipNext(rig.Now, rig, out _);
        rig.Scan();
        var due = new List<DueNext>();
        rig.Demand.AddDueNext(due, rig.Demands, rig.Now);
        Assert.Equal(
            [
                new DueNext("north", "flood", Seven + Duration.FromHours(6)),
                new DueNext("north/tier 1 light", "off", Seven + Duration.FromHours(15)),
                new DueNext("north/tier 2 light", "off", Seven + Duration.FromHours(15)),
            ],
            due.OrderBy(each => each.Subject, StringComparer.Ordinal));
    }

    [Fact]
    public void DuringAFloodThePumpGoesOffNext()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(10));
        rig.RunUntil(Seven + Duration.FromMinutes(1));
        var due = new List<DueNext>();
        rig.Demand.AddDueNext(due, rig.Demands, rig.Now);
        Assert.Contains(new DueNext("north/pump", "off", Seven + Duration.FromMinutes(10) + DemandRig.Grid * 2), due);
    }

    private static string Words(DemandRig rig, string load) => rig.Demand.Words(rig[load], rig.Id(load), rig.Now.Monotonic);
}
