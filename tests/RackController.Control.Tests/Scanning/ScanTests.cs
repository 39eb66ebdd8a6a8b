using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Scanning;

public class ScanTests
{
    [Fact]
    public void WhereAMeasuringSensorBecomesImplausibleIsOneOfItsLevels()
    {
        var site = ProofTests.ProofSite.Whole;
        var levels = new Rig(site).Control.Levels;
        var level = site.SensorNamed("north/reservoir level");
        Assert.Contains(new SensorLevel(level, 0), levels);
        Assert.Contains(new SensorLevel(level, 400), levels);
        Assert.DoesNotContain(levels, each => site[each.Sensor].IsContact);
    }

    [Fact]
    public void ASteadyScanAllocatesNothing()
    {
        var rig = new Rig(Sites.OneRack(5));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromMinutes(2));
        var readings = new Readings(rig.Site);
        var now = rig.Now;
        long Allocated()
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            for (var scan = 0; scan < 1_000; scan++)
            {
                now = now with { Monotonic = now.Monotonic + Duration.FromMilliseconds(1), Wall = now.Wall + Duration.FromMilliseconds(1) };
                rig.Fill(readings, now.Monotonic);
                rig.Control.Scan(now, readings, ScanConditions.Good, [], rig);
            }

            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Allocated();

        Assert.Equal(0, Allocated());
        Assert.True(rig.IsOn("north/pump"));
    }

    [Fact]
    public void EveryRowOfTheTableHasAnInstanceOnARackWithEverySensor()
    {
        var site = Sites.OneRack().WithPumpCurrent().WithCircuitCurrent().WithContactor();
        var thermometer = site.Sensors[1] with { Kind = SensorKind.AirTemperature };
        site = site with
        {
            Sensors =
            [
                .. site.Sensors,
                thermometer with { Id = new SensorId(site.Sensors.Length), Name = "north/air" },
                thermometer with { Id = new SensorId(site.Sensors.Length + 1), Name = "north/water", Kind = SensorKind.WaterTemperature },
                thermometer with
                {
                    Id = new SensorId(site.Sensors.Length + 2), Name = "north/depth", Kind = SensorKind.TrayLevel, TierNumber = 1,
                },
                thermometer with
                {
                    Id = new SensorId(site.Sensors.Length + 3), Name = "north/lux", Kind = SensorKind.LightLevel, TierNumber = 1,
                },
                site.Sensors[0] with
                {
                    Id = new SensorId(site.Sensors.Length + 4),
                    Name = "north/full",
                    Kind = SensorKind.TrayFullFloat,
                    TierNumber = 1,
                    HeightMm = 45,
                },
            ],
        };
        site = site.WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(6), FullDepthMm: 40) },
        });
        var start = new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);

        var built = CauseAndEffectTable.Build(new InterlockSite(site, start, []));

        Assert.Equal(CauseAndEffectTable.Rows.Select(row => row.Id), built.Select(interlock => interlock.Row.Id).Distinct());
        Assert.Equal(built.Length, built.Select(interlock => interlock.Key).Distinct().Count());
    }

    [Fact]
    public void StopPutsEveryLoadInItsSafeStateUntilSomebodyResumes()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan(new Stop("anyone", null));
        Assert.All(rig.Site.Loads, load => Assert.Equal(load.SafeState == SwitchState.On, rig.IsOn(load.Name)));

        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromDays(1));
        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal("a person stopped the rack", rig.Why("north/tier 1 light").Summary);

        rig.Scan(new Resume("Ada", null));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    [Fact]
    public void ARequestNeverOverridesAnInterlock()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Set("north/reservoir low float", 0);
        rig.LeapFor(Duration.FromMinutes(20));
        rig.Scan(new FloodNow("Ada", new RackId(0)));
        rig.LeapFor(Duration.FromHours(2));

        Assert.DoesNotContain(rig.Events, e => e is { Subject: "north/pump", What: "on" });
        Assert.NotNull(rig.Alarm("north/flood-held"));
    }

    [Fact]
    public void ShelvingAnAlarmLeavesItsInterlockAtWork()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Scan(new Shelve("Ada", "north/high-water", Duration.FromHours(8)));
        Assert.Equal(AlarmState.Shelved, rig.Alarm("north/high-water")!.State);
        rig.Set("north/leak rope", 0);
        rig.LeapFor(Duration.FromHours(7));

        Assert.DoesNotContain(rig.Events, e => e is { Subject: "north/pump", What: "on" });
    }

    [Fact]
    public void AnAlarmIsShelvedForADayAtMost()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Scan(new Shelve("Ada", "north/high-water", Duration.FromDays(40)));
        Assert.Equal(
            "shelve: shelved for 24 h, the longest that is allowed", rig.Events.Last(e => e.Kind == EventKind.Request).What);
        rig.LeapFor(Duration.FromHours(24) + Duration.FromSeconds(1));

        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/high-water")!.State);
    }

    [Fact]
    public void AnAlarmGoesOutOfServiceAndBackWithAnAnswerThatSaysSo()
    {
        const string Key = "north/high-water";
        var rig = new Rig(Sites.OneRack());
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        foreach (var outOfService in new[] { true, true, false, false })
        {
            rig.Scan(new SetAlarmOutOfService("Ada", Key, outOfService));
        }

        Assert.Equal(
            [
                "taken out of service until somebody puts it back", $"{Key} is out of service already",
                "back in service, and unacknowledged", $"{Key} is in service already",
            ],
            rig.Events.Where(e => e.Kind == EventKind.Request).Select(e => e.What));
        Assert.False(rig.IsOn("north/pump"));
    }

    [Fact]
    public void AClockThatStepsIsTold()
    {
        var rig = new Rig(Sites.OneRack());
        rig.ScanFor(Duration.FromSeconds(5));
        rig.StepWall(Duration.FromHours(-1));
        rig.Scan();
        rig.TrustWall(false);
        rig.Scan();

        Assert.Equal(["stepped back by 1 h", "not trusted"], rig.Events.Where(e => e.Kind == EventKind.Clock).Select(e => e.What));
        Assert.NotNull(rig.Alarm("controller/clock-untrusted"));
    }

    [Fact]
    public void AfterAScanThatFailedTheVeryNextOneMatters()
    {
        var rig = new Rig(Sites.OneRack());
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Scan();
        Assert.True(rig.Control.NextChange > rig.Now.Monotonic);
        rig.Conditions = new ScanConditions(new IoOutcome("the board is gone"), Duration.Zero);
        rig.Scan();
        Assert.True(rig.Control.NextChange <= rig.Now.Monotonic);
    }
}
