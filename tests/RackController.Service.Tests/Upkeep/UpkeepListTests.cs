using CsCheck;
using NodaTime;
using RackController.Control;
using RackController.Growing;
using RackController.Model;
using RackController.RackFile;
using RackController.Testing;
using Xunit.Abstractions;

namespace RackController.Service.Tests;

public sealed class UpkeepListTests(ITestOutputHelper output) : IDisposable
{
    private static readonly Site site = RackFileReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml")).Site!;
    private static readonly Rack rack = site.Racks[0];
    private static readonly string pump = site[rack.Pump.Load].Name;
    private static readonly LocalDate first = new(2026, 5, 1);

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    // By hand: 10 floods of 6 min are 10 floods and 1 h.
    [Fact]
    public void WhatIsNotSummedUpYetIsCountedFromTheEvents()
    {
        using var journal = Journal();
        AddFloods(journal, 0, 10, days: 5);

        var screen = Work(journal, UpkeepWork.Screen, [], day: 5);

        Assert.Equal((10, 1.0, false), (screen.Use.Floods, Math.Round(screen.Use.PumpOn.TotalHours, 9), screen.Use.WasDone));
        Assert.Equal(At(0, 12), screen.Use.Since);
    }

    [Fact]
    public void DaysThatAreSummedUpCountByTheirSumsAndTheRestByItsEvents()
    {
        using var journal = Journal();
        AddFloods(journal, 0, 40, days: 20);
        AddSums(journal, 0, 29, floods: 2, hours: 0.2);
        AddFloods(journal, 30, 3, days: 1);

        var screen = Work(journal, UpkeepWork.Screen, [], day: 31);

        // By hand: 30 days of 2 floods and 0.2 h, and 3 floods of 6 min.
        Assert.Equal((63, 6.3), (screen.Use.Floods, Math.Round(screen.Use.PumpOn.TotalHours, 9)));
    }

    [Fact]
    public void WhatWasDoneIsCountedAnewFromThatMomentOn()
    {
        using var journal = Journal();
        AddFloods(journal, 0, 20, days: 10);
        AddSums(journal, 0, 9, floods: 2, hours: 0.2);

        // Floods begin at noon and an hour later; done in between on the last day.
        var done = new UpkeepDone(At(9, 12.5), "Ada", "screen", "north", "");
        var list = List(journal, [done], day: 10);

        Assert.Equal((1, true), (Find(list, UpkeepWork.Screen).Use.Floods, Find(list, UpkeepWork.Screen).Use.WasDone));
        Assert.Equal((20, false), (Find(list, UpkeepWork.Flush).Use.Floods, Find(list, UpkeepWork.Flush).Use.WasDone));
    }

    [Fact]
    public void OnlyTheLastTimeCountsAndOnlyThatRackAndWork()
    {
        using var journal = Journal();
        AddFloods(journal, 0, 20, days: 10);
        UpkeepDone[] done =
        [
            new(At(8, 6), "Ada", "screen", "north", ""), new(At(2, 6), "Ada", "screen", "north", ""),
            new(At(9, 6), "Ada", "screen", "south", ""), new(At(9, 6), "Ada", "sweep", "north", ""),
        ];

        Assert.Equal(4, Work(journal, UpkeepWork.Screen, done, day: 10).Use.Floods);
    }

    // By hand: from noon to the last event of its run, 4 min, and from the start of the next flood until now, 2 min.
    [Fact]
    public void APumpRunsUntilItIsToldOffOrTheControllerEnds()
    {
        using var journal = Journal();
        journal.Add(MadeUpJournal.Event(At(0, 12), EventKind.Load, pump, "on"));
        journal.Add(MadeUpJournal.Event(At(0, 12) + Duration.FromMinutes(4), EventKind.Load, "north/aerator", "off"));
        using var next = new MadeUpJournal(folder.File("journal.db"));
        next.Add(MadeUpJournal.Event(At(2, 0) - Duration.FromMinutes(2), EventKind.Load, pump, "on"));

        Assert.Equal(6, Work(next, UpkeepWork.Screen, [], day: 2).Use.PumpOn.TotalMinutes, 9);
    }

    // Long ago the whole day counts: a flood too many, never one too few.
    [Fact]
    public void LongAgoTheWholeOfTheDayCounts()
    {
        using var journal = Journal();
        AddFloods(journal, 0, 2, days: 1);
        AddSums(journal, 0, 59, floods: 2, hours: 0.2);
        var done = new UpkeepDone(At(30, 12.5), "Ada", "screen", "north", "");

        Assert.Equal(60, Work(journal, UpkeepWork.Screen, [done], day: 60).Use.Floods);
    }

    // Whatever is summed up when, and whenever something was done: the count never falls while nobody does anything.
    [Fact]
    public void NothingMovesAwayWhileDaysGoByAndAreSummedUp() => Gen.Select(Gen.Double[0, 16], Gen.Int[0, 3].Array[18]).Sample(
        (doneAt, floods) =>
        {
            using var journal = new MadeUpJournal(folder.File($"{Guid.NewGuid()}.db"));
            journal.Add(Started);
            UpkeepDone[] done = [new(At(0, 12) + Duration.FromDays(doneAt), "Ada", "screen", "north", "")];
            var before = (Floods: 0, PumpOn: Duration.Zero);
            for (var day = 0; day < floods.Length; day++)
            {
                AddFloods(journal, day, floods[day], days: 1);
                foreach (var isSummed in (bool[])[false, true])
                {
                    if (isSummed)
                    {
                        AddSums(journal, day, day, floods[day], floods[day] * 0.1);
                    }

                    var now = Work(journal, UpkeepWork.Screen, done, day + 1).Use;
                    if (now.Floods < before.Floods || now.PumpOn < before.PumpOn - Duration.FromSeconds(1))
                    {
                        return false;
                    }

                    before = (now.Floods, now.PumpOn);
                }
            }

            return true;
        },
        iter: 8, threads: 1);

    [Fact]
    public void WhatIsDueFirstStandsInFront()
    {
        using var journal = Journal();
        AddFloods(journal, 0, 60, days: 20);

        var list = List(journal, [], day: 20);

        // By hand: 20 of 10 days of the reservoir is 2; 20 of 14 days of the screen 1.43.
        Assert.Equal([UpkeepWork.Reservoir, UpkeepWork.Screen], list.Works.Take(2).Select(work => work.Work));
        Assert.Equal([true, true], list.Works.Take(2).Select(work => work.IsOverdue));
    }

    [Fact]
    public void WhatTheRackFileNeverAsksForIsNotListed()
    {
        using var journal = Journal();
        var quiet = site with { Racks = [rack with { Upkeep = [new UpkeepRule(UpkeepWork.Pump, null)] }] };
        using var history = journal.Read();

        Assert.DoesNotContain(UpkeepWork.Pump, UpkeepList.Read(quiet, history, [], At(1, 0)).Works.Select(work => work.Work));
    }

    [Fact]
    public void RelaysAreShownByWhatTheControllerRemembersOfThem()
    {
        var memory = Happenings.Memory(($"{pump}/relay-worn/operations", 100_000), ("north/tier 1 light/relay-worn/operations", 20));
        var relays = RelayLife.AllOf(site, memory);

        Assert.Equal((pump, 100_000, true), (relays[0].Load.Name, relays[0].Operations, relays[0].IsWorn));
        Assert.Equal(("north/tier 1 light", 0.0002, false), (relays[1].Load.Name, relays[1].Share, relays[1].IsWorn));
        Assert.All(relays.Skip(2), relay => Assert.Equal(0, relay.Operations));
    }

    // The same count that raises the alarm: switched by the controller itself, and read as it remembers it.
    [Fact]
    public void TheCountOfARelayIsThatOfTheAlarm()
    {
        var worn = site with { Loads = [.. site.Loads.Select(load => load with { RatedOperations = 100 })] };
        var key = $"{pump}/relay-worn/operations";
        var start = new Moment(MonotonicTime.Zero, At(0, 12), WallTrusted: true);

        var control = new RackControl(worn, start, Happenings.Memory((key, 42)));

        Assert.Equal(42, RelayLife.AllOf(worn, control.Save()).Single(relay => relay.Load.Name == pump).Operations);
    }

    [Fact]
    public void TenYearsOfSumsAreReadInAMoment()
    {
        using var journal = Journal();
        AddSums(journal, 0, 3650, floods: 3, hours: 0.3);
        AddFloods(journal, 3651, 3, days: 1);
        var watch = System.Diagnostics.Stopwatch.StartNew();

        var list = List(journal, [], day: 3652);

        output.WriteLine($"upkeep of ten years: {watch.ElapsedMilliseconds} ms");
        Assert.Equal(3651 * 3 + 3, Find(list, UpkeepWork.Screen).Use.Floods);
    }

    private static ControlEvent Started => MadeUpJournal.Event(At(0, 12), EventKind.Controller, site.Name, "started");

    private MadeUpJournal Journal()
    {
        var journal = new MadeUpJournal(folder.File("journal.db"));
        journal.Add(Started);
        return journal;
    }

    private static Instant At(int day, double hour) =>
        site.Zone.AtStartOfDay(first.PlusDays(day)).ToInstant() + Duration.FromHours(hour);

    // As many as asked, spread over the days from noon on, an hour apart.
    private static void AddFloods(MadeUpJournal journal, int fromDay, int count, int days)
    {
        for (var flood = 0; flood < count; flood++)
        {
            var perDay = Math.Max(1, count / days);
            var at = At(fromDay + flood / perDay, 12 + flood % perDay);
            journal.Add(
                MadeUpJournal.Event(at, EventKind.Load, pump, "on"), MadeUpJournal.Event(at, EventKind.Flood, "north", FloodEvent.Filling),
                MadeUpJournal.Event(at + Duration.FromMinutes(6), EventKind.Load, pump, "off"));
        }
    }

    private static void AddSums(MadeUpJournal journal, int fromDay, int untilDay, double floods, double hours) => journal.Add(
    [
        .. Enumerable.Range(fromDay, untilDay - fromDay + 1).SelectMany(day => (DaySum[])
        [
            new(first.PlusDays(day), "north", DayFigure.Floods, floods, floods, floods),
            new(first.PlusDays(day), pump, DayFigure.HoursOn, hours, hours, hours),
            new(first.PlusDays(day), pump, DayFigure.EnergyKWh, 9, 9, 9),
        ]),
    ]);

    private static UpkeepList List(MadeUpJournal journal, UpkeepDone[] done, int day)
    {
        using var history = journal.Read();
        return UpkeepList.Read(site, history, done, At(day, 0));
    }

    private static UpkeepStatus Work(MadeUpJournal journal, UpkeepWork work, UpkeepDone[] done, int day) =>
        Find(List(journal, done, day), work);

    private static UpkeepStatus Find(UpkeepList list, UpkeepWork work) => list.Works.Single(one => one.Work == work);
}
