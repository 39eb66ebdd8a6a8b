using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Recording;

/// <summary>Which scans are on record: those at which something changed, and once a minute what everything says.</summary>
public class ScanRecorderTests
{
    private const string Level = "north/level";
    private readonly Rig rig = new(Measured());
    private readonly ScanRecorder recorder;
    private readonly List<RecordedPage> pages = [];
    private int told;

    public ScanRecorderTests()
    {
        rig.Set(Level, 200);
        rig.LeapFor(Duration.FromMinutes(20));
        recorder = new ScanRecorder(rig.Control, rig.Now, memory: null);
        told = rig.Events.Count;
        Scan();
        Scan();
        pages.Clear();
    }

    private IReadOnlyList<RecordedScan> Noted => [.. pages.SelectMany(page => page.Scans)];

    [Fact]
    public void OfSteadyScansOneAMinuteIsOnRecordWithoutAReading()
    {
        ScanFor(Duration.FromMinutes(5));
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
            Scan();
        }

        Assert.InRange(Noted.Count, 2, 4);
        Assert.All(Noted, scan => Assert.Equal(rig.Sensor(Level).Id.Index, Assert.Single(scan.Readings).Sensor));
    }

    [Fact]
    public void WhatPassesALevelIsPutDownAtOnceAndByItself()
    {
        rig.Set(Level, 36);
        Scan();
        Assert.Empty(Noted);
        EndPage();
        var before = Noted.Count;
        rig.Set(Level, 34);
        Scan();
        EndPage();
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
            Scan(conditions);
        }

        EndPage();
        Assert.Equal(all, Noted.Select(scan => scan.Conditions));
    }

    [Fact]
    public void AScanThatIsHardlyLateIsNotWorthALine()
    {
        Scan(new ScanConditions(default, rig.Site.Scan.Period - Duration.Epsilon));
        EndPage();
        Assert.Empty(Noted);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void AScanAtWhichTheClockSteppedIsOnRecordWithItsTime(int seconds)
    {
        rig.StepWall(Duration.FromSeconds(seconds));
        Scan();
        EndPage();
        Assert.Equal(rig.Now, Assert.Single(Noted).At);
    }

    [Fact]
    public void AScanAtWhichTheClockIsNoLongerTrustedIsOnRecord()
    {
        rig.TrustWall(false);
        Scan();
        EndPage();
        Assert.Equal(rig.Now, Noted[0].At);
        Assert.False(Noted[0].At.WallTrusted);
    }

    [Fact]
    public void WhatAPersonAskedForIsOnRecordWithWhatCameOfIt()
    {
        Scan(requests: new Stop("Ada", null));
        EndPage();
        var scan = Noted[0];
        Assert.Equal(new Stop("Ada", null), Assert.Single(scan.Requests));
        Assert.NotNull(scan.Events);
    }

    private void ScanFor(Duration length)
    {
        for (var end = rig.Now.Monotonic + length; rig.Now.Monotonic < end;)
        {
            Scan();
        }
    }

    private void Scan(ScanConditions conditions = default, params OperatorRequest[] requests)
    {
        var readings = new Readings(rig.Site);
        rig.Conditions = conditions;
        var commands = rig.Scan(requests);
        rig.Fill(readings, rig.Now.Monotonic);
        ControlEvent[] events = [.. rig.Events.Skip(told)];
        told = rig.Events.Count;
        recorder.Note(rig.Now, readings, conditions, requests, commands, events);
        if (recorder.IsPageDue)
        {
            EndPage();
        }
    }

    private void EndPage() => pages.Add(RecordedPages.Read(recorder.TakePage().Body));

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
