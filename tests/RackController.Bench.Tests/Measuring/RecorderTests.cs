using NodaTime;
using RackController.Bench.Tests.Support;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Measuring;

public sealed class RecorderTests
{
    private readonly FakeObserved now = new();

    [Fact]
    public void AFloodIsWrittenDownWithItsFillAndDrainTimesOnceTheTraysAreEmpty()
    {
        var recorder = new FloodRecorder(now.Site.Racks[0]);
        Assert.False(recorder.Look(now));
        now.Phase = FloodPhase.Filling;
        now.Powered.Add(now.Pump);
        Assert.True(recorder.Look(now.After(10)));
        now.DepthMm = 42; // Standpipe at 45 mm: nine tenths are 40.5.
        Assert.False(recorder.Look(now.After(120)));
        now.Phase = FloodPhase.Draining;
        now.Powered.Clear();
        recorder.Look(now.After(60));
        now.DepthMm = 2;
        recorder.Look(now.After(300));

        var flood = Assert.Single(recorder.Records);
        Assert.Equal(Duration.FromSeconds(180), flood.PumpRan);
        Assert.Equal(Duration.FromSeconds(10), flood.Elapsed);
        Assert.All(flood.Trays, tray =>
        {
            Assert.Equal(42, tray.PeakMm);
            Assert.Equal(Duration.FromSeconds(120), tray.Filled);
            Assert.Equal(Duration.FromSeconds(300), tray.Drained);
        });
    }

    [Fact]
    public void OfManyFloodsTheNewestAreKeptAndAllAreCounted()
    {
        var recorder = new FloodRecorder(now.Site.Racks[0]);
        for (var flood = 0; flood <= FloodRecorder.MostRecords; flood++)
        {
            now.Phase = FloodPhase.Filling;
            now.DepthMm = flood == 0 ? 60 : 42;
            recorder.Look(now.After(120));
            recorder.Look(now.After(120));
            now.Phase = FloodPhase.Idle;
            recorder.Look(now.After(600));
        }

        recorder.Close();
        Assert.Equal(FloodRecorder.MostRecords, recorder.Records.Count);
        Assert.Equal(FloodRecorder.MostRecords + 1, recorder.Totals.Count);
        Assert.All(recorder.Totals.Trays, tray => Assert.Equal((42.0, 60.0), tray.PeakMm.Range));
    }

    [Fact]
    public void ATrayThatNeverFilledSaysSo()
    {
        var recorder = new FloodRecorder(now.Site.Racks[0]);
        now.Phase = FloodPhase.Filling;
        recorder.Look(now);
        now.DepthMm = 20;
        recorder.Look(now.After(100));
        recorder.Close();
        Assert.All(Assert.Single(recorder.Records).Trays, tray => Assert.Null(tray.Filled));
    }

    [Fact]
    public void TheRunThatEndsJustNowStillShowsItsLength()
    {
        var ledger = new LoadLedger(now.Site);
        ledger.MoveTo(Duration.FromMinutes(5));
        ledger.Note(now.Pump, true);
        ledger.MoveTo(Duration.FromMinutes(15));
        ledger.Note(now.Pump, false);
        Assert.Equal(Duration.FromMinutes(10), ledger.Unbroken(now.Pump));
        ledger.MoveTo(Duration.FromMinutes(16));
        Assert.Equal(Duration.Zero, ledger.Unbroken(now.Pump));
        Assert.Equal(Duration.FromMinutes(10), ledger.Total[now.Pump.Index]);
        Assert.Equal(1, ledger.SwitchedOn[now.Pump.Index]);
    }

    // IANA time zone database 2025b: New York, 2026-03-08 02:00 EST -> 03:00 EDT; 2026-11-01 02:00 EDT -> 01:00 EST.
    [Theory]
    [InlineData(8, 3, 23)]
    [InlineData(1, 11, 25)]
    public void ADayOnWhichTheClocksChangeEndsAtItsOwnMidnight(int dayOfMonth, int month, int hours)
    {
        var site = Sites.OneRack();
        var start = new LocalDate(2026, month, dayOfMonth).AtStartOfDayInZone(site.Zone).ToInstant();
        var keeper = new DayKeeper(site, start);
        keeper.CountFlood(new RackId(0));

        Assert.Null(keeper.CloseIfOver(start + Duration.FromHours(hours) - Duration.FromSeconds(1), new LoadLedger(site)));
        var day = keeper.CloseIfOver(start + Duration.FromHours(hours), new LoadLedger(site));
        Assert.Equal(Duration.FromHours(hours), day!.Length);
        Assert.Equal(1, day.FloodsByRack[0]);
    }

    [Fact]
    public void AFirstDayThatBeganBeforeTheRunIsNotCounted()
    {
        var site = Sites.OneRack();
        var start = new LocalDateTime(2026, 3, 2, 6, 0).InZoneStrictly(site.Zone).ToInstant();
        Assert.Null(new DayKeeper(site, start).CloseIfOver(start + Duration.FromHours(18), new LoadLedger(site)));
    }

    [Fact]
    public void ACurveKeepsTheLastStillPointBeforeItMoves()
    {
        var trend = new Trend("depth", tolerance: 1);
        foreach (var (second, value) in ((int, double)[])[(0, 5), (10, 5.2), (20, 5.4), (21, 9), (30, 9.1)])
        {
            trend.Add(second, value);
        }

        trend.Close();
        Assert.Equal([0, 20, 21, 30], trend.Points.Select(point => point.Seconds));
    }
}
