using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Recording;

/// <summary>Which scans are on record: those at which something changed, and once a minute what everything says.</summary>
public class ScanRecorderTests
{
    private const string Level = "north/level";
    private readonly Rig rig = new(Measured());
    private readonly RecordedRig record;

    public ScanRecorderTests()
    {
        rig.Set(Level, 200);
        rig.LeapFor(Duration.FromMinutes(20));
        record = new RecordedRig(rig);
        record.Scan();
        record.Scan();
        record.Pages.Clear();
    }

    private IReadOnlyList<RecordedScan> Noted => record.Noted;

    [Fact]
    public void OfSteadyScansOneAMinuteIsOnRecordWithoutAReading()
    {
        rig.ScanFor(Duration.FromMinutes(5));
        Assert.InRange(Noted.Count, 5, 7);
        Assert.All(Noted, scan => Assert.Empty(scan.Readings));
        Assert.All(Noted, scan => Assert.Empty(scan.Commands));
        Assert.All(Noted, scan => Assert.Null(scan.Events));
    }

    [Fact]
    public void WhatWandersBetweenTwoLevelsIsPutDownOnceAMinute()
    {
        for (var tenth = 0; tenth < 1_300; tenth++)
        {
            rig.Set(Level, 200 + tenth / 1_000.0);
            record.Scan();
        }

        Assert.InRange(Noted.Count, 2, 4);
        Assert.All(Noted, scan => Assert.Equal(rig.Sensor(Level).Id.Index, Assert.Single(scan.Readings).Sensor));
    }

    [Fact]
    public void WhatPassesALevelIsPutDownAtOnceAndByItself()
    {
        rig.Set(Level, 36);
        record.Scan();
        Assert.Empty(Noted);
        record.EndPage();
        var before = Noted.Count;
        rig.Set(Level, 34);
        record.Scan();
        record.EndPage();
        Assert.Contains(Noted.Skip(before), scan => scan.Readings.Any(each => each.Reading.Value == 34));
    }

    [Fact]
    public void AScanThatIsLateOrFailsIsOnRecordWithWhatItWasLike()
    {
        var late = new ScanConditions(default, rig.Site.Scan.Period);
        var gone = new ScanConditions(new IoOutcome("the board is gone"), Duration.Zero);
        var wrong = new ScanConditions(new IoOutcome("the board is back but wrong"), Duration.Zero);
        ScanConditions[] all = [late, gone, gone, gone, wrong, late, wrong, gone];
        foreach (var conditions in all)
        {
            record.Scan(conditions);
        }

        record.EndPage();
        Assert.Equal(all, Noted.Select(scan => scan.Conditions));
    }

    [Fact]
    public void AScanThatIsHardlyLateIsNotWorthALine()
    {
        record.Scan(new ScanConditions(default, rig.Site.Scan.Period - Duration.Epsilon));
        record.EndPage();
        Assert.Empty(Noted);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void AScanAtWhichTheClockSteppedIsOnRecordWithItsTime(int seconds)
    {
        rig.StepWall(Duration.FromSeconds(seconds));
        record.Scan();
        record.EndPage();
        Assert.Equal(rig.Now, Assert.Single(Noted).At);
    }

    [Fact]
    public void AScanAtWhichTheClockIsNoLongerTrustedIsOnRecord()
    {
        rig.TrustWall(false);
        record.Scan();
        record.EndPage();
        Assert.Equal(rig.Now, Noted[0].At);
        Assert.False(Noted[0].At.WallTrusted);

        // And so is the page that begins then.
        Assert.Equal(rig.Now, record.EndPage().At);
    }

    [Fact]
    public void WhatAPersonAskedForIsOnRecordWithWhatCameOfIt()
    {
        record.Scan(requests: new Stop("Ada", null));
        record.EndPage();
        var scan = Noted[0];
        Assert.Equal(new Stop("Ada", null), Assert.Single(scan.Requests));
        Assert.NotNull(scan.Events);
    }

    // At night, with nothing due for hours; the pump draws air below 30 mm.
    private static Site Measured()
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Times = new NoFloods() },
            Lights = [null, null],
        });
        var level = site.Sensors[0] with
        {
            Id = new SensorId(site.Sensors.Length),
            Name = Level,
            Kind = SensorKind.ReservoirLevel,
            PlausibleMax = 430,
        };
        return site with { Sensors = [.. site.Sensors, level] };
    }
}
