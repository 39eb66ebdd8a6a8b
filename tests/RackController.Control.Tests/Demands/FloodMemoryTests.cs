using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>What the floods of a rack remember says so by itself, and does not lean on something else that happens to change in the
/// same scan. Floods are due at 07:00, 13:00 and 19:00 in New York.</summary>
public class FloodMemoryTests
{
    private static readonly Site site = Sites.OneRack();
    private static readonly Instant seven = Instant.FromUtc(2026, 6, 1, 11, 0);
    private static readonly Moment start = new(MonotonicTime.FromMilliseconds(50_000), seven - Duration.FromMinutes(1), WallTrusted: true);

    [Fact]
    public void ThatASecondTryIsDroppedIsRemembered()
    {
        var rig = new DemandRig(site, start.Wall);
        var cycle = Cycle(rig, new Dictionary<string, long> { ["n/flood-second-try"] = 1, ["n/flood-wet"] = 1 });
        Assert.True(cycle.AnotherFollows);
        AssertSaid(cycle.Save, () => cycle.Version, () => cycle.Drop("a person asked to leave it out", rig.Now, rig));
    }

    [Fact]
    public void ThatAFillWhichARestartCutIsTriedOnceMoreIsRemembered()
    {
        var rig = new DemandRig(site, start.Wall);
        rig.Scan();
        var cycle = Cycle(rig, new Dictionary<string, long> { ["n/flood-filling"] = 1, ["n/flood-wet"] = 1 });
        var tiers = new TiersInUse(site.Racks[0], "n", new MemoryReader(null, rig.Now));
        AssertSaid(cycle.Save, () => cycle.Version, () => cycle.Update(rig.Facts, tiers, new Agenda(), rig));
    }

    [Fact]
    public void ThatAFloodIsNoLongerOwedIsRemembered()
    {
        var (clock, table) = Timetable(start);
        var due = start with { Monotonic = start.Monotonic + Duration.FromMinutes(1), Wall = seven };
        clock.Update(due, new Agenda());
        Assert.True(table.Update(clock, due).Runs);
        AssertSaid(table.Save, () => table.Version, table.Settle);
    }

    [Fact]
    public void ThatAClockSetBackFarBeginsADayAnewIsRemembered()
    {
        var (clock, table) = Timetable(start);
        table.Update(clock, start);
        var back = start with { Monotonic = start.Monotonic + Duration.FromSeconds(1), Wall = start.Wall - Duration.FromHours(5) };
        clock.Update(back, new Agenda());
        AssertSaid(table.Save, () => table.Version, () => table.Update(clock, back));
    }

    [Fact]
    public void FromWhenOnAClockIsTrustedIsRemembered()
    {
        var (clock, table) = Timetable(start with { WallTrusted = false });
        var trusted = start with { Monotonic = start.Monotonic + Duration.FromSeconds(1) };
        clock.Update(trusted, new Agenda());
        AssertSaid(table.Save, () => table.Version, () => table.Update(clock, trusted));
    }

    [Fact]
    public void TheTimeIsDueToBeRememberedEveryTenMinutes()
    {
        var rig = new Rig(site);
        rig.LeapFor(ScheduleClock.RememberedEvery - Duration.FromMilliseconds(100));
        var before = rig.Control.MemoryVersion;
        rig.Scan();
        Assert.Equal(before + 1, rig.Control.MemoryVersion);
    }

    [Fact]
    public void AFloodLeftOutWithoutATrustedClockIsNotFoundOwedAfterARestart()
    {
        var rig = new DemandRig(site, Instant.FromUtc(2000, 1, 1, 0, 0), trusted: false);
        rig.Scan();
        rig.Demand.TrySkipNext(rig.Now, rig, out _);
        rig.Run(Duration.FromHours(8) + Duration.FromMinutes(1));
        Assert.Single(rig.When(FloodEvent.LeftOut));
        var again = new DemandRig(site, rig.Now.Wall, trusted: false, rig.Save());
        again.Run(Duration.FromMinutes(1));
        Assert.Empty(again.When(FloodEvent.Due));
    }

    [Fact]
    public void AFloodThatMergedWithOneThatWaitsIsFoundDueAfterARestart()
    {
        var rig = new DemandRig(site, start.Wall) { PumpMayRun = _ => false };
        rig.Scan();
        rig.Demand.TryFloodNow(rig.Now, rig, out _);
        rig.Run(Duration.FromMinutes(2));
        Assert.Single(rig.When(FloodEvent.Merged));
        var again = new DemandRig(site, rig.Now.Wall, memory: rig.Save());
        again.Run(Duration.FromMinutes(1));
        Assert.Single(again.When(FloodEvent.Filling));
    }

    [Fact]
    public void AFillThatWentWellIsNotToldAsSlowAfterARestart()
    {
        var untilFull = FillUntilFullTests.Site;
        var rig = new DemandRig(untilFull, start.Wall);
        foreach (var full in untilFull.Sensors.Where(sensor => sensor.Kind == SensorKind.TrayFullFloat))
        {
            rig.Facts.Know(full.Id, 1);
        }

        rig.Run(Duration.FromMinutes(10));
        Assert.Single(rig.When(FloodEvent.Soaking));
        Assert.False(new DemandRig(untilFull, rig.Now.Wall, memory: rig.Save()).Demand.FillHitItsLimit);
    }

    private static FloodCycle Cycle(DemandRig rig, Dictionary<string, long> items) => new(
        site, site.Racks[0], "n",
        new MemoryReader(new ControlMemory(rig.Now.Wall, true, items.ToImmutableSortedDictionary()), rig.Now), rig.Now.Monotonic, []);

    private static (ScheduleClock Clock, FloodTimetable Table) Timetable(Moment start)
    {
        var none = new MemoryReader(null, start);
        return (new ScheduleClock("n/clock", none, start, () => start.Wall), new FloodTimetable("n", site, site.Racks[0], none, start));
    }

    private static void AssertSaid(Action<MemoryWriter> save, Func<long> version, Action when)
    {
        var (before, kept) = (version(), Kept());
        when();
        Assert.NotEqual(kept, Kept());
        Assert.True(version() > before, "it went unsaid");

        IEnumerable<KeyValuePair<string, long>> Kept()
        {
            var writer = new MemoryWriter(start, expected: 0);
            save(writer);
            return writer.ToMemory().Items;
        }
    }
}
