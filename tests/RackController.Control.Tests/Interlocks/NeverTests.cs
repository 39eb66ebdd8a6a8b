using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>What no relay may ever show, whatever sensors say, people ask, clocks do and power does.</summary>
public class NeverTests
{
    private static readonly RackId north = new(0);

    private static readonly Action<Rig, Warden>[] acts =
    [
        (rig, _) => rig.Set("north/reservoir low float", 0),
        (rig, _) => rig.Set("north/reservoir low float", 1),
        (rig, _) => rig.Set("north/tier 1 high float", 1),
        (rig, _) => rig.Set("north/tier 1 high float", 0),
        (rig, _) => rig.Set("north/leak rope", 1),
        (rig, _) => rig.Set("north/leak rope", 0),
        (rig, _) => rig.Set("sockets/supply sense", 0),
        (rig, _) => rig.Set("sockets/supply sense", 1),
        (rig, _) => rig.Silence("north/leak rope"),
        (rig, _) => rig.Speak("north/leak rope"),
        (rig, _) => rig.StepWall(Duration.FromHours(-1)),
        (rig, _) => rig.StepWall(Duration.FromHours(5)),
        (rig, _) => rig.TrustWall(false),
        (rig, _) => rig.TrustWall(true),
        (rig, _) => rig.Conditions = ScanConditions.Good with { Io = new IoOutcome("chip relays is gone") },
        (rig, _) => rig.Conditions = ScanConditions.Good,
        (rig, _) => rig.Ask(new FloodNow("Ada", north)),
        (rig, warden) => Stop(rig, warden, true),
        (rig, warden) => Stop(rig, warden, false),
        (rig, warden) => Hold(rig, warden),
        (rig, _) => rig.Ask(new SetTierInUse("Ada", north, 2, false)),
        (rig, _) => rig.Ask(new SetTierInUse("Ada", north, 2, true)),
        (rig, _) => Reset(rig, "north/high-water"),
        (rig, _) => Reset(rig, "north/low-float"),
        (rig, _) => Reset(rig, "north/pump-maximum-run"),
        (rig, _) => Reset(rig, "sockets/supply-lost"),
        (rig, warden) => Restart(rig, warden, trusted: true),
        (rig, warden) => Restart(rig, warden, trusted: false),
    ];

    private static readonly Gen<(int Tenths, Action<Rig, Warden> Act)> gesture =
        from tenths in Gen.OneOf(Gen.Int[1, 30], Gen.Int[30, 6_000])
        from act in Gen.Int[0, acts.Length - 1].Select(i => acts[i])
        select (tenths, act);

    [Fact]
    [Trait("Pace", "long")]
    public void NoRelayShowsWhatItMayNeverShow() => gesture.List[1, 60].Sample(
        gestures =>
        {
            var rig = new Rig(BusySite());
            var warden = new Warden(rig);
            warden.Booted();
            foreach (var (tenths, act) in gestures)
            {
                for (var scan = 0; scan < tenths; scan++)
                {
                    rig.Scan();
                    warden.Look();
                }

                act(rig, warden);
            }
        },
        iter: 40);

    private static void Stop(Rig rig, Warden warden, bool stopped)
    {
        rig.Ask(stopped ? new Stop("Ada", null) : new Resume("Ada", null));
        warden.IsStopped = stopped;
    }

    private static void Hold(Rig rig, Warden warden)
    {
        rig.Ask(new HoldForService("Ada", north, Duration.FromMinutes(7)));
        warden.HandsUntil = rig.Now.Monotonic + Duration.FromMinutes(7);
    }

    private static void Reset(Rig rig, string latch)
    {
        rig.Ask(new ResetLatch("Ada", latch));
        rig.Ask(new ConfirmReset("Ben", latch));
    }

    private static void Restart(Rig rig, Warden warden, bool trusted)
    {
        var handsLeft = warden.HandsUntil - rig.Now.Monotonic;
        rig.Restart(Duration.FromMinutes(3), trusted);
        warden.Booted();
        warden.HandsUntil = rig.Now.Monotonic + handsLeft;
    }

    /// <summary>A site that floods every quarter of an hour, with no room on its circuit for everything.</summary>
    private static Site BusySite()
    {
        var site = Sites.OneRack()
            .WithLimits(limits => limits with
            {
                PumpMaximumRun = Duration.FromMinutes(4),
                PumpRest = Duration.FromMinutes(3),
                PumpDailyBudget = Duration.FromMinutes(40),
            })
            .WithSchedule(schedule => schedule with
            {
                Floods = new FloodPlan(
                    new FloodsEvery(Duration.FromMinutes(15), LocalTime.Midnight, Duration.FromHours(24)),
                    new FillForTime(Duration.FromMinutes(2)),
                    Duration.FromMinutes(5),
                    Duration.FromMinutes(4),
                    MissedFloods.RunOne),
            });
        return site with { Circuits = [site.Circuits[0] with { ContinuousLimitA = 1.6 }] };
    }
}
