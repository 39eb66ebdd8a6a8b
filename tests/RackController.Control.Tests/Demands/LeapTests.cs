using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>The bench leaps from one change to the next. What it sees must be what a scan every 100 ms sees.</summary>
public class LeapTests
{
    private sealed record Case(
        MadeSchedule Made, bool Trusted, int FillSeconds, int SoakSeconds, int DrainSeconds, int Chance);

    private static readonly Gen<Case> Cases = Gen.Select(
        Gens.Schedules, Gen.Bool, Gen.Int[1, 900], Gen.Int[0, 600], Gen.Int[0, 900], Gen.Int[0, 1000],
        (made, trusted, fill, soak, drain, hash) => new Case(made, trusted, fill, soak, drain, hash));

    [Fact]
    [Trait("Pace", "long")]
    public void LeapingGivesTheSameDemandsAndEventsAsScanning() => Cases.Sample(
        made =>
        {
            var leaping = Run(made, leap: true);
            var scanning = Run(made, leap: false);
            Assert.Equal(scanning.Events, leaping.Events);
            Assert.Equal(scanning.Changes, leaping.Changes);
            Assert.Equal(scanning.Save().Items, leaping.Save().Items);
        },
        iter: 20);

    [Fact]
    [Trait("Pace", "long")]
    public void PumpRunsOfTheScheduleNeverOverlapAndAlwaysEnd() => Cases.Sample(
        made =>
        {
            var rig = Rig(made);
            rig.Run(Duration.FromDays(3));
            var cycle = new[] { FloodEvent.Filling, FloodEvent.Draining };
            var phases = rig.Events.Select(each => each.What).Where(cycle.Contains).ToList();
            Assert.All(phases.Index(), each => Assert.Equal(cycle[each.Index % 2], each.Item));
        },
        iter: 200);

    private static DemandRig Run(Case made, bool leap)
    {
        var rig = Rig(made);
        rig.Run(Duration.FromHours(2), leap);
        rig.StepWall(Duration.FromMinutes(made.Chance - 500));
        rig.Run(Duration.FromHours(2), leap);
        rig.Trust(!made.Trusted);
        rig.Run(Duration.FromHours(2), leap);
        return rig;
    }

    /// <summary>Forbids the pump for whole stretches of seven minutes, as if at random.</summary>
    private static DemandRig Rig(Case made)
    {
        var stretch = 7 * 60 * NodaConstants.NanosecondsPerSecond;
        return new DemandRig(SiteOf(made), made.Made.Around, made.Trusted)
        {
            PumpMayRun = now => (now.Monotonic.Nanoseconds / stretch * 2654435761L + made.Chance) % 10 < 7,
            PermissionChanges = now => new MonotonicTime((now.Nanoseconds / stretch + 1) * stretch),
        };
    }

    private static Site SiteOf(Case made)
    {
        var site = Sites.OneRack() with { Zone = made.Made.Zone };
        return site.WithSchedule(schedule => schedule with
        {
            Lights = [made.Made.Photoperiod, made.Made.Photoperiod],
            LightStagger = made.Made.Stagger,
            Floods = new FloodPlan(
                made.Made.Times,
                new FillForTime(Duration.FromSeconds(made.FillSeconds)),
                Duration.FromSeconds(made.SoakSeconds),
                Duration.FromSeconds(made.DrainSeconds),
                made.Chance % 2 == 0 ? MissedFloods.RunOne : MissedFloods.Skip),
            Runs =
            [
                schedule.Runs[0],
                new RunInCycles(schedule.Runs[1].Load, Duration.FromMinutes(13), Duration.FromMinutes(29)),
            ],
        });
    }
}
