using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Recording;

/// <summary>What stands on a page: nothing that a replay needs is missing, and what goes without saying takes no room.</summary>
public class RecordContentTests
{
    private const string Flow = "north/flow";
    private const string Water = "north/water";
    private readonly Rig rig = new(Measured(), Instant.FromUtc(2026, 6, 1, 15, 30));
    private readonly RecordedRig record;

    public RecordContentTests()
    {
        rig.Set(Flow, 0);
        rig.LeapFor(Duration.FromMinutes(20));
        record = new RecordedRig(rig);
        record.Scan();
        record.Scan();
        record.EndPage();
        record.Pages.Clear();
    }

    [Fact]
    public void EveryLevelThatIsPassedIsOnRecordInTheScanThatPassedIt()
    {
        Assert.NotEmpty(rig.Control.Levels);
        foreach (var level in rig.Control.Levels.Where(level => !rig.Site[level.Sensor].IsContact))
        {
            var name = rig.Site[level.Sensor].Name;
            rig.Set(name, level.Value + 0.01);
            record.ScanAndEndPage();
            foreach (var value in (double[])[level.Value - 0.01, level.Value + 0.01])
            {
                rig.Set(name, value);
                var page = record.ScanAndEndPage();
                Assert.Contains(page.Scans, scan => scan.Readings.Any(each => each.Reading.Value.Equals(value)));
            }
        }
    }

    [Fact]
    public void AFlowThatBeginsWhileThePumpStandsIsOnRecordThoughNothingComesOfIt()
    {
        rig.Set(Flow, 30);
        var scan = Assert.Single(record.ScanAndEndPage().Scans);
        Assert.Null(scan.Events);
        Assert.Equal((rig.Sensor(Flow).Id.Index, 30), (Assert.Single(scan.Readings).Sensor, scan.Readings[0].Reading.Value));
    }

    [Fact]
    public void AScanAtWhichSomethingWasDueIsOnRecordThoughNothingCameOfIt()
    {
        rig.Set("north/air", rig.Value("north/air") + 0.1);
        record.Scan();
        var due = rig.Control.NextChange;
        rig.LeapFor(due - rig.Now.Monotonic - Duration.FromMilliseconds(100));
        Assert.Equal(due, rig.Control.NextChange);
        record.EndPage();
        var scan = Assert.Single(record.ScanAndEndPage().Scans);
        Assert.Equal((due, null), (scan.At.Monotonic, scan.Events));
    }

    [Fact]
    public void WithWhatHappensStandsAllThatWasReadThen()
    {
        rig.Set(Water, rig.Value(Water) + 0.25);
        var scan = Assert.Single(record.ScanAndEndPage(requests: new SkipNextFlood("Ada", new RackId(0))).Scans);
        Assert.NotNull(scan.Events);
        Assert.Equal(rig.Sensor(Water).Id.Index, Assert.Single(scan.Readings).Sensor);
    }

    [Fact]
    public void OfAScanThatFailedButCameInTimeItIsNotSaidHowNearlyLateItWas()
    {
        var failed = new ScanConditions(new IoOutcome("the board is gone"), rig.Site.Scan.Period - Duration.FromMilliseconds(1));
        var scan = Assert.Single(record.ScanAndEndPage(failed).Scans);
        Assert.Equal(failed with { LateBy = Duration.Zero }, scan.Conditions);
    }

    [Fact]
    public void ALoadIsOnRecordWhenItIsToldOnAndWhenItIsToldOff()
    {
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        record.EndPage();
        var pump = rig.Load("north/pump").Id.Index;
        Assert.Equal(
            [SwitchState.On, SwitchState.Off],
            record.Noted.SelectMany(scan => scan.Commands).Where(command => command.Load == pump).Select(command => command.State));
    }

    [Fact]
    public void AScanHasItsWallTimeThoughOnlyTheStepsOfTheClockArePutDown()
    {
        rig.LeapFor(Duration.FromMinutes(3));
        record.EndPage();
        Assert.All(record.Noted, scan => Assert.Equal(rig.Now.Wall - scan.At.Wall, rig.Now.Monotonic - scan.At.Monotonic));
    }

    /// <summary>A byte for what it has, and one for every seven bits of 60 000 000 000 ns (arithmetic).</summary>
    [Fact]
    public void AMinuteInWhichNothingHappensTakesSevenBytes()
    {
        rig.LeapFor(Duration.FromMinutes(2));
        record.EndPage();
        var empty = record.Recorder.TakePage().Body.Length;
        rig.Rack = null;
        rig.LeapFor(Duration.FromMinutes(1) - Duration.FromMilliseconds(100));
        var readings = new Readings(rig.Site);
        var commands = rig.Scan();
        rig.Fill(readings, rig.Now.Monotonic);
        record.Recorder.Note(rig.Now, readings, ScanConditions.Good, [], commands, []);
        Assert.Equal(7, record.Recorder.TakePage().Body.Length - empty);
    }

    [Fact]
    public void TwoDaysRunAgainToTheSameEventsAndCommands()
    {
        var fresh = new Rig(Measured(), Instant.FromUtc(2026, 6, 1, 15, 30));
        var recorded = new RecordedRig(fresh);
        var commands = new RecordedStory();
        fresh.Rack += () => commands.NoteCommands(fresh.Site, fresh.Now, fresh.Commands);
        fresh.LeapFor(Duration.FromHours(30));
        fresh.Silence(Water);
        recorded.Scan(requests: new FloodNow("Ada", new RackId(0)));
        fresh.LeapUntil(() => fresh.IsOn("north/pump"));
        fresh.Set(Flow, 0);
        fresh.StepWall(Duration.FromMinutes(-3));
        fresh.LeapFor(Duration.FromHours(18));
        recorded.EndPage();

        var again = PlayedBack.Of(fresh.Site, recorded.Pages);
        Assert.Equal(fresh.Events, again.Events);
        Assert.Equal(commands.Commands, again.Commands);
    }

    [Fact]
    public void PagesAreNumberedOneAfterTheOther()
    {
        for (var minute = 0; minute < 5; minute++)
        {
            rig.LeapFor(Duration.FromMinutes(1));
        }

        Assert.InRange(record.Pages.Count, 5, 7);
        Assert.Equal(Enumerable.Range((int)record.Pages[0].Number, record.Pages.Count), record.Pages.Select(page => (int)page.Number));
    }

    [Fact]
    public void ARecordThatLostAPageGoesOnWithWhatCameMeanwhile()
    {
        record.Recorder.LosePage();
        rig.Set(Flow, 30);
        rig.Set(Water, 21);
        record.Scan(requests: new FloodNow("Ada", new RackId(0)));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromSeconds(70));

        var resumed = record.Pages.Single(page => page.Kind == PageKind.Resumes);
        Assert.Equal(SwitchState.On, resumed.State!.Commands[rig.Load("north/pump").Id.Index]);
        Assert.Equal([30, 21], resumed.State.Readings.TakeLast(2).Select(each => each.Reading.Value));
        Assert.All(record.Pages.SkipWhile(page => page != resumed).Skip(1), page => Assert.Equal(PageKind.Continues, page.Kind));
    }

    // With air that is looked at once an hour, and a flood now and then.
    private static Site Measured()
    {
        var site = Sites.OneRack();
        Sensor[] more =
        [
            site.Sensors[0] with { Name = "north/air", Kind = SensorKind.AirTemperature, PlausibleMax = 50 },
            site.Sensors[0] with { Name = Flow, Kind = SensorKind.PumpFlow, PlausibleMax = 72 },
            site.Sensors[0] with { Name = Water, Kind = SensorKind.WaterTemperature, PlausibleMax = 50 },
        ];
        return site with
        {
            Sensors = [.. site.Sensors, .. more.Select((sensor, i) => sensor with { Id = new SensorId(site.Sensors.Length + i) })],
        };
    }
}
