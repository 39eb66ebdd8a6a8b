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

    [Theory]
    [InlineData("Lit", SwitchState.On, "the schedule always lights tier 1")]
    [InlineData("Dark", SwitchState.Off, "the schedule never lights tier 1")]
    [InlineData("NoFlood", SwitchState.Off, "no flood is scheduled")]
    [InlineData("ReadingHigh", SwitchState.On, "it runs until north/air falls below 22 °C")]
    [InlineData("ReadingLow", SwitchState.Off, "it rests until north/air rises above 25 °C")]
    [InlineData("ReadingUnknown", SwitchState.On, "north/air is unknown, and on is its safe state")]
    [InlineData("ReadingUnknown", SwitchState.Off, "north/air is unknown, and off is its safe state")]
    [InlineData("FloodFilling", SwitchState.On, "a flood fills the trays")]
    [InlineData("FloodSoaking", SwitchState.On, "the water is held at depth")]
    [InlineData("FloodDraining", SwitchState.On, "the trays drain back through the supply")]
    [InlineData("FloodDraining", SwitchState.Off, "the trays drain")]
    public void WithoutAnEndItSaysNone(string cause, SwitchState state, string words) =>
        Assert.Equal(words, Words(cause, state, until: null));

    [Theory]
    [InlineData("CycleOn", SwitchState.On, "its cycle has it on until 07:30")]
    [InlineData("CycleOff", SwitchState.Off, "its cycle has it off until 07:30")]
    [InlineData("FloodDraining", SwitchState.On, "the trays drain back through the supply until 07:30")]
    public void WithAnEndItSaysWhen(string cause, SwitchState state, string words) =>
        Assert.Equal(words, Words(cause, state, Seven + Duration.FromMinutes(30)));

    [Fact]
    public void AFillUntilFullSaysWhenItEndsAtTheLatest()
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(6), FullDepthMm: 40) },
        });
        var rig = new DemandRig(site, Seven - Duration.FromMinutes(10));
        rig.RunUntil(Seven + Duration.FromMinutes(1));
        Assert.Equal("a flood fills the trays until they are full, until 07:06 at the latest", Words(rig, "north/pump"));
    }

    [Theory]
    [InlineData(23, "06:00")]
    [InlineData(24, "07:00 on 2026-06-02")]
    [InlineData(-23, "08:00")]
    [InlineData(-24, "07:00 on 2026-05-31")]
    public void ATimeADayAwayIsSaidWithItsDate(int hours, string words) =>
        Assert.Equal(words, Sites.OneRack().Zone.SayTime(Seven + Duration.FromHours(hours), Seven));

    [Fact]
    public void ATierOutOfUseSaysSo()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven);
        rig.Demand.TrySetTierInUse(2, false, out var answer);
        Assert.Equal("tier 2 is now out of use", answer);
        rig.Demand.TrySetTierInUse(2, false, out answer);
        Assert.Equal("tier 2 is already out of use", answer);
        rig.Demand.TrySetTierInUse(1, true, out answer);
        Assert.Equal("tier 1 is already in use", answer);
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

    private static string Words(string cause, SwitchState state, Instant? until)
    {
        var site = Sites.OneRack();
        var air = site.Sensors[0] with { Id = new SensorId(0), Name = "north/air", Kind = SensorKind.AirTemperature };
        site = site with { Sensors = site.Sensors.SetItem(0, air) };
        var rig = new DemandRig(site, Seven);
        var demand = new Demand(state, Enum.Parse<DemandCause>(cause), until ?? Instant.MinValue);
        var clock = new ScheduleClock("clock", new MemoryReader(null, rig.Now), rig.Now, () => Seven);
        var light = rig.Id("north/tier 1 light");
        return DemandWords.Of(
            demand, site[light], new RunByReading(light, air.Id, 25, 22), site, clock, rig.Now.Monotonic, rig.Now.Monotonic);
    }

    private static string Words(DemandRig rig, string load) => rig.Demand.Words(rig[load], rig.Id(load), rig.Now.Monotonic);
}
