using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Scanning;

/// <summary>
/// Leaving alone whoever was asked nothing, reads what it read and has nothing due comes to the same as looking at everybody in
/// every scan: the same events, commands, words and memory.
/// </summary>
public class AttentionTests
{
    private static readonly RackId second = new(1);

    private static readonly Action<Rig>[] acts =
    [
        rig => rig.Set("rack 1/reservoir low float", 0),
        rig => rig.Set("rack 1/reservoir low float", 1),
        rig => rig.Set("rack 2/tier 1 high float", 1),
        rig => rig.Set("rack 2/tier 1 high float", 0),
        rig => rig.Set("rack 3/tier 2 full", 1),
        rig => rig.Set("rack 3/tier 2 full", 0),
        rig => rig.Set("rack 2/air", 40),
        rig => rig.Set("rack 2/air", 28),
        rig => rig.Set("rack 3/level", 41),
        rig => rig.Set("rack 3/level", 12),
        rig => rig.Set("sockets 1/supply sense", 0),
        rig => rig.Set("sockets 1/supply sense", 1),
        rig => rig.Silence("rack 3/leak rope"),
        rig => rig.Speak("rack 3/leak rope"),
        rig => rig.Silence("rack 2/air"),
        rig => rig.Speak("rack 2/air"),
        rig => rig.StepWall(Duration.FromHours(-1)),
        rig => rig.StepWall(Duration.FromHours(5)),
        rig => rig.TrustWall(false),
        rig => rig.TrustWall(true),
        rig => rig.Conditions = new ScanConditions(new IoOutcome("the board is gone"), Duration.Zero),
        rig => rig.Conditions = ScanConditions.Good,
        rig => rig.Ask(new FloodNow("Ada", second)),
        rig => rig.Ask(new SkipNextFlood("Ada", second)),
        rig => rig.Ask(new HoldForService("Ada", second, Duration.FromMinutes(7))),
        rig => rig.Ask(new Stop("Ada", second)),
        rig => rig.Ask(new Resume("Ada", null)),
        rig => rig.Ask(new SetTierInUse("Ada", second, 2, false)),
        rig => rig.Ask(new Shelve("Ada", "rack 1/low-float", Duration.FromMinutes(3))),
        rig => rig.Ask(new Acknowledge("Ada", "rack 1/low-float")),
        rig => rig.Ask(new ResetLatch("Ada", "rack 2/high-water")),
        rig => rig.Ask(new ConfirmReset("Ada", "rack 2/high-water")),
    ];

    private static readonly Gen<(int AfterTenths, int Act)> gesture = Gen.Select(Gen.Int[0, 9_000], Gen.Int[0, acts.Length - 1]);

    [Fact]
    public void LookingAtWhomItConcernsComesToTheSameAsLookingAtEverybody() =>
        Gen.Select(gesture.List[0, 14], Gen.Int[0, 48], Gen.Int[2, 40]).Sample(
            (gestures, startHalfHours, limitTenthsA) =>
            {
                var start = Instant.FromUtc(2026, 10, 31, 18, 0) + Duration.FromMinutes(30 * startHalfHours);
                var site = SiteOf(limitTenthsA / 10.0 + 1);
                var some = new Rig(site, start);
                var all = new Rig(site, start) { LooksEverywhere = true };
                foreach (var (tenths, act) in gestures)
                {
                    some.ScanFor(Duration.FromMilliseconds(100 * tenths));
                    all.ScanFor(Duration.FromMilliseconds(100 * tenths));
                    AssertSame(all, some);
                    acts[act](some);
                    acts[act](all);
                }

                some.ScanFor(Duration.FromMinutes(5));
                all.ScanFor(Duration.FromMinutes(5));
                AssertSame(all, some);
            },
            iter: 25);

    [Fact]
    public void AMovingLevelThatNobodyAsksForDoesNotHideTheOneThatEndsAFill()
    {
        var rig = new Rig(SiteOf(12));
        rig.LeapUntil(() => rig.IsOn("rack 3/pump"));
        rig.ScanFor(Duration.FromSeconds(30));
        rig.Set("rack 3/tier 2 full", 1);
        rig.Set("rack 3/level", 39);
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.Equal(FloodPhase.Filling, rig.Control.FloodPhase(new RackId(2)));

        rig.Set("rack 3/level", 41);
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Equal(FloodPhase.Soaking, rig.Control.FloodPhase(new RackId(2)));
    }

    [Fact]
    public void WhatIsSaidOfAirThatHasCooledIsTheSameAtEveryScan()
    {
        var some = new Rig(SiteOf(12), Instant.FromUtc(2026, 11, 1, 3, 5));
        var all = new Rig(SiteOf(12), Instant.FromUtc(2026, 11, 1, 3, 5)) { LooksEverywhere = true };
        foreach (var celsius in new[] { 40, 28 })
        {
            some.ScanFor(Duration.FromSeconds(5));
            all.ScanFor(Duration.FromSeconds(5));
            some.Set("rack 2/air", celsius);
            all.Set("rack 2/air", celsius);
        }

        for (var scan = 0; scan < 10; scan++)
        {
            some.Scan();
            all.Scan();
            AssertSame(all, some);
        }
    }

    private static void AssertSame(Rig all, Rig some)
    {
        Assert.Equal(all.Events, some.Events);
        Assert.Equal(all.Site.Loads.Where(load => all.IsOn(load.Name)), some.Site.Loads.Where(load => some.IsOn(load.Name)));
        Assert.Equal(all.Control.Save().Items, some.Control.Save().Items);
        Assert.Equal(all.Control.MemoryVersion, some.Control.MemoryVersion);
        Assert.Equal(all.Control.DueNext().AsEnumerable(), some.Control.DueNext());
        Assert.Equal(all.Control.Alarms().AsEnumerable(), some.Control.Alarms());
        Assert.Equal(
            all.Control.Why().Select(why => why with { Interlocks = [] }), some.Control.Why().Select(why => why with { Interlocks = [] }));
        Assert.Equal(all.Control.Why().SelectMany(why => why.Interlocks), some.Control.Why().SelectMany(why => why.Interlocks));
    }

    /// <summary>Three racks, two of them on one circuit; the second has its own air, and the third fills until full by a float and a
    /// level.</summary>
    private static Site SiteOf(double limitA)
    {
        var site = Sites.ManyRacks(racks: 3, racksToACircuit: 2);
        return site with
        {
            Circuits = [.. site.Circuits.Select(circuit => circuit with { ContinuousLimitA = limitA })],
            Racks = [.. site.Racks.Select(rack => rack with { Limits = Hasty(rack.Limits), Schedule = Busy(rack) })],
            Sensors =
            [
                .. site.Sensors,
                Like(site, "rack 2/air", SensorKind.AirTemperature, tier: null, 0) with { PlausibleMax = 60 },
                Like(site, "rack 3/tier 2 full", SensorKind.TrayFullFloat, 2, 1),
                Like(site, "rack 3/level", SensorKind.TrayLevel, 1, 2) with { PlausibleMax = 80 },
            ],
        };
    }

    private static Sensor Like(Site site, string name, SensorKind kind, int? tier, int more) => site.Sensors[0] with
    {
        Id = new SensorId(site.Sensors.Length + more),
        Name = name,
        Kind = kind,
        Rack = site.Racks.Single(rack => name.StartsWith(rack.Name, StringComparison.Ordinal)).Id,
        TierNumber = tier,
    };

    private static InterlockLimits Hasty(InterlockLimits limits) => limits with
    {
        PumpMaximumRun = Duration.FromMinutes(4),
        PumpRest = Duration.FromMinutes(3),
        PumpDailyBudget = Duration.FromMinutes(12),
    };

    private static RackSchedule Busy(Rack rack) => rack.Schedule with
    {
        Floods = new FloodPlan(
            new FloodsEvery(Duration.FromMinutes(15), new LocalTime(0, rack.Id.Index), Duration.FromHours(24)),
            rack.Id.Index == 2 ? new FillUntilFull(Duration.FromMinutes(2), FullDepthMm: 40) : new FillForTime(Duration.FromMinutes(2)),
            Duration.FromMinutes(1),
            Duration.FromMinutes(4),
            MissedFloods.RunOne),
        Runs = [rack.Schedule.Runs[0], new RunInCycles(rack.Schedule.Runs[1].Load, Duration.FromMinutes(2), Duration.FromMinutes(3))],
    };
}
