using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Testing;
using Xunit.Abstractions;

namespace RackController.Service.Tests;

public sealed class DayKeeperTests : IDisposable
{
    private static readonly TimeSpan patience = TimeSpan.FromSeconds(20);

    private static readonly Site site = RackFileReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml")).Site!;
    private static readonly LocalDate day = new(2026, 5, 30);
    private static readonly Instant midnight = site.Zone.AtStartOfDay(day).ToInstant();

    private readonly TemporaryFolder folder = new();
    private readonly StillClock clock = new();
    private readonly ControllerAlarms alarms;

    private readonly ITestOutputHelper output;

    public DayKeeperTests(ITestOutputHelper output)
    {
        this.output = output;
        alarms = new ControllerAlarms(clock);
    }

    private string Path => folder.File("journal.db");

    // By hand: a light of 120 W and 170 umol/m2/s that is on for 16 h takes 1.92 kWh and gives 170 x 57600 / 1e6 = 9.792 mol/m2; 60
    // samples of 20 and 60 of 22 have the mean 21.
    [Fact]
    public void ADayIsSummedUpOnceItIsOver()
    {
        using (var journal = new MadeUpJournal(Path))
        {
            journal.Add(
                MadeUpJournal.Event(midnight - Duration.FromHours(1), EventKind.Load, "north/tier 1 light", "off"),
                MadeUpJournal.Event(midnight + Duration.FromHours(6), EventKind.Load, "north/tier 1 light", "on"),
                MadeUpJournal.Event(midnight + Duration.FromHours(7), EventKind.Flood, "north", FloodEvent.Filling),
                MadeUpJournal.Event(midnight + Duration.FromHours(22), EventKind.Load, "north/tier 1 light", "off"));
            journal.Add([.. Enumerable.Range(0, 120).Select(minute => new Sample(
                midnight + Duration.FromMinutes(minute), "north/air temperature", minute < 60 ? 20 : 22))]);
        }

        var sums = Keep(midnight + Duration.FromHours(25));

        var air = new DaySum(day, "north/air temperature", DayFigure.Measured, 20, 21, 22);
        Assert.Equal(air, Find(sums, DayFigure.Measured, air.Subject));
        Assert.Equal(16, Find(sums, DayFigure.HoursOn, "north/tier 1 light").Mean, 9);
        Assert.Equal(1.92, Find(sums, DayFigure.EnergyKWh, "north/tier 1 light").Mean, 9);
        Assert.Equal(9.792, Find(sums, DayFigure.LightMolPerM2, "north/tier 1 light").Mean, 9);
        Assert.Equal(4, sums.Where(sum => sum.Figure == DayFigure.LightMolPerM2).Select(sum => sum.Subject).Distinct().Count());
        Assert.Equal(1, Find(sums, DayFigure.Floods, "north").Mean);
    }

    [Fact]
    public void AFigureOfANewerVersionHidesNoOther()
    {
        using (var journal = new MadeUpJournal(Path))
        {
            journal.Add([new DaySum(day, "north", DayFigure.Floods, 3, 3, 3)]);
        }

        using (var connection = JournalFile.Connect(Path, SqliteOpenMode.ReadWrite))
        using (var add = connection.CreateCommand())
        {
            add.CommandText = "INSERT INTO day_series VALUES (9, 'north', 'Later'); INSERT INTO days SELECT day, 9, 1, 1, 1 FROM days;";
            add.ExecuteNonQuery();
        }

        using var history = JournalHistory.Open(Path);
        Assert.Equal(DayFigure.Floods, Assert.Single(history.Days(day, day)).Figure);
    }

    [Fact]
    public void WhatIsOnTheDiskComesBackAsItWasAndADayIsNotSummedUpTwice()
    {
        List<DaySum> sums =
        [
            new(day, "north/air temperature", DayFigure.Measured, 19.5, 21, 23.25), new(day, "north", DayFigure.Floods, 3, 3, 3),
        ];
        using var journal = new MadeUpJournal(Path);
        journal.Add(MadeUpJournal.Event(midnight, EventKind.Load, "north/pump", "on"));
        journal.Add(sums);
        journal.Add(sums);
        using var history = journal.Read();

        Assert.Equal(sums, history.Days(day, day).OrderBy(sum => sum.Figure));
        Assert.Equal(day, history.LastDay());
        Assert.Empty(Keep(midnight + Duration.FromHours(25)));
    }

    [Fact]
    public void UnderAClockThatIsNotTrustedNoDayIsOver()
    {
        using var journal = new MadeUpJournal(Path);
        var keeper = new DayKeeper(Path, site, alarms);

        keeper.Follow(new Moment(MonotonicTime.Zero, midnight + Duration.FromDays(2), WallTrusted: false));

        Assert.Empty(keeper.Take());
    }

    [Fact]
    public void WhileTheJournalCannotBeReadNothingIsSummedUpAndItIsTriedAgain()
    {
        var keeper = new DayKeeper(Path, site, alarms);
        var now = new Moment(MonotonicTime.Zero, midnight + Duration.FromHours(25), WallTrusted: true);
        keeper.Follow(now);
        Assert.Empty(keeper.Take());
        using (var journal = new MadeUpJournal(Path))
        {
            journal.Add(MadeUpJournal.Event(midnight + Duration.FromHours(6), EventKind.Load, "north/pump", "on"));
        }

        IReadOnlyList<DaySum> sums = [];
        Assert.True(SpinWait.SpinUntil(
            () =>
            {
                keeper.Follow(now);
                sums = keeper.Take();
                return sums.Count > 0;
            },
            patience));
    }

    [Fact]
    public void AFailureThatNobodyElseTellsIsAnAlarm()
    {
        using var journal = new MadeUpJournal(Path);
        journal.Add(MadeUpJournal.Event(midnight, EventKind.Load, "north/pump", "on"));
        var now = midnight + Duration.FromDays(1);
        var keeper = new DayKeeper(Path, site with { Zone = new ZoneWithoutPast(now) }, alarms);

        keeper.Follow(new Moment(MonotonicTime.Zero, now, WallTrusted: true));

        Assert.True(SpinWait.SpinUntil(() => !alarms.Active().IsEmpty, patience));
        Assert.Equal("controller/day-sums", Assert.Single(alarms.Active()).Key);
        Assert.Empty(keeper.Take());
    }

    [Fact]
    public void AYearOfSumsIsSmallAndReadAtOnce()
    {
        var year = Enumerable.Range(0, 365).SelectMany(at => site.Loads.SelectMany(load => (DaySum[])
            [
                new(day.PlusDays(at), load.Name, DayFigure.HoursOn, 16, 16, 16),
                new(day.PlusDays(at), load.Name, DayFigure.EnergyKWh, 1.9, 1.9, 1.9),
            ]).Concat(site.Sensors.Where(sensor => !sensor.IsContact)
                .Select(sensor => new DaySum(day.PlusDays(at), sensor.Name, DayFigure.Measured, 1.1, 2.2, 3.3)))).ToList();
        using (var journal = new MadeUpJournal(Path))
        {
            foreach (var one in year.GroupBy(sum => sum.Day))
            {
                journal.Add([.. one]);
            }
        }

        using var history = JournalHistory.Open(Path);
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var found = history.Days(day, day.PlusDays(364)).ToList();

        var bytes = new FileInfo(Path).Length;
        output.WriteLine($"a year of sums: {year.Count} figures in {bytes / 1000} kB, read in {watch.ElapsedMilliseconds} ms");
        Assert.Equal(year.Count, found.Count);
        Assert.InRange(bytes / 365, 1, 4_000);
    }

    public void Dispose()
    {
        clock.Dispose();
        folder.Dispose();
    }

    private IReadOnlyList<DaySum> Keep(Instant now)
    {
        var keeper = new DayKeeper(Path, site, alarms);
        keeper.Follow(new Moment(MonotonicTime.Zero, now, WallTrusted: true));
        IReadOnlyList<DaySum> sums = [];
        SpinWait.SpinUntil(
            () =>
            {
                sums = keeper.Take();
                return sums.Count > 0 || keeper.IsUpTo(now);
            },
            patience);
        return sums;
    }

    private static DaySum Find(IReadOnlyList<DaySum> sums, DayFigure figure, string subject) =>
        Assert.Single(sums, sum => sum.Figure == figure && sum.Subject == subject && sum.Day == day);

    /// <summary>A defect that shows only when the past is looked at.</summary>
    private sealed class ZoneWithoutPast(Instant begins) : DateTimeZone("without past", false, Offset.Zero, Offset.Zero)
    {
        public override NodaTime.TimeZones.ZoneInterval GetZoneInterval(Instant instant) =>
            instant < begins ? throw new KeyNotFoundException("no past") : Utc.GetZoneInterval(instant);
    }
}
