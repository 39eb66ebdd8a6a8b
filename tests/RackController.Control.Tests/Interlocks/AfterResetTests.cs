using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>What led to a latch is counted anew after its reset, goes on over a restart before it, and counts only where it
/// matters.</summary>
public class AfterResetTests
{
    private const string Float = "north/reservoir low float";
    private const string Sense = "sockets/supply sense";

    [Fact]
    public void TheLowFloatMayFallDryOnceMoreAfterAReset()
    {
        var rig = Flooding();
        FallDry(rig);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        FallDry(rig);
        rig.LeapFor(Duration.FromMinutes(2));
        Reset(rig, "north/low-float");
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        FallDry(rig);
        Assert.Single(rig.Events, each => each is { Subject: "north/low-float", What: "latched" });
    }

    [Fact]
    public void ALowFloatThatBobsWhileThePumpStandsNeverLatches()
    {
        var rig = new Rig(Sites.OneRack());
        for (var time = 0; time < 4; time++)
        {
            rig.Set(Float, 0);
            rig.ScanFor(Duration.FromSeconds(1));
            rig.Set(Float, 1);
            rig.LeapFor(Duration.FromMinutes(2));
        }

        Assert.Equal(4, rig.Events.Count(each => each is { Subject: "north/low-float", What: "acts" }));
        Assert.DoesNotContain(rig.Events, each => each is { Subject: "north/low-float", What: "latched" });
    }

    [Fact]
    public void ThatTheLowFloatFellDryInThisFloodIsRememberedAcrossARestart()
    {
        var rig = Flooding();
        FallDry(rig);
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Restart(Duration.FromSeconds(10));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        FallDry(rig);
        Assert.Single(rig.Events, each => each is { Subject: "north/low-float", What: "latched" });
    }

    [Fact]
    public void AfterAResetTheSupplyMayBeLostAsOftenAgain()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromMinutes(1));
        Lose(rig, times: 3);
        Reset(rig, "sockets/supply-lost");
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.True(rig.IsOn("north/fan"));

        Lose(rig, times: 2);
        Assert.True(rig.IsOn("north/fan"));
        Lose(rig, times: 1);
        Assert.False(rig.IsOn("north/fan"));
    }

    [Fact]
    public void LossesAreCountedOnOverARestart()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromMinutes(1));
        Lose(rig, times: 2);
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(10));
        Lose(rig, times: 1);
        Assert.Equal("the supply was lost 3 times within 24 h", rig.Why("north/fan").Summary);
    }

    [Fact]
    public void TheQuietPeriodSaysWhatItFollowsAndIsNoAlarm()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(rig.IsOn("north/fan"));
        rig.Set(Sense, 0);
        rig.ScanFor(Duration.FromSeconds(10));
        rig.Set(Sense, 1);
        rig.ScanFor(Duration.FromSeconds(3));
        Assert.Matches("^the circuit stays quiet until [0-9:]{8} after its supply came back$", rig.Why("north/fan").Summary);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm("sockets/supply-lost")!.State);

        rig.Restart(Duration.FromMinutes(1));
        rig.ScanFor(Duration.FromSeconds(3));
        Assert.Matches("^the circuit stays quiet until [0-9:]{8} after the restart$", rig.Why("north/fan").Summary);
    }

    [Fact]
    public void AMaximumRunAfterAResetIsTheFirstAgain()
    {
        var rig = new Rig(Sites.OneRack().WithLimits(limits => limits with
        {
            PumpMaximumRun = Duration.FromMinutes(2),
            PumpRest = Duration.FromMinutes(1),
            MaximumRunsToLatch = 2,
        }));
        for (var run = 0; run < 2; run++)
        {
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.LeapUntil(() => !rig.IsOn("north/pump"));
        }

        rig.LeapFor(Duration.FromMinutes(2));
        Reset(rig, "north/pump-maximum-run");
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        Assert.Single(rig.Events, each => each is { Subject: "north/pump-maximum-run", What: "latched" });
    }

    [Fact]
    public void APowerCutInTheMidstOfARunForgetsNoneOfItsBudget()
    {
        var rig = new Rig(Sites.OneRack().WithLimits(limits => limits with { PumpDailyBudget = Duration.FromMinutes(14) }));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromMinutes(8));
        rig.Restart(Duration.FromSeconds(10));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        var began = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Alarm("north/pump-daily-budget") is not null);
        Assert.Equal(Duration.FromMinutes(6), rig.Now.Monotonic - began);
    }

    private static void Reset(Rig rig, string key)
    {
        rig.Scan(new ResetLatch("Ada", key));
        rig.Scan(new ConfirmReset("Ben", key));
        Assert.Equal("confirm reset: the latch is released", rig.Events.Last(each => each.Kind == EventKind.Request).What);
    }

    private static void Lose(Rig rig, int times)
    {
        for (var loss = 0; loss < times; loss++)
        {
            rig.Set(Sense, 0);
            rig.LeapFor(Duration.FromMinutes(1));
            rig.Set(Sense, 1);
            rig.LeapFor(Duration.FromMinutes(10));
        }
    }

    private static void FallDry(Rig rig)
    {
        rig.Set(Float, 0);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set(Float, 1);
    }

    private static Rig Flooding()
    {
        var rig = new Rig(Sites.OneRack().WithLimits(limits => limits with { PumpRest = Duration.FromSeconds(10) }));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(30));
        return rig;
    }
}
