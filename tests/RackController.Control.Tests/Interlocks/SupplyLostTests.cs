using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row supply-lost.</summary>
public class SupplyLostTests
{
    private const string Sense = "sockets/supply sense";

    [Fact]
    public void ALostSupplySwitchesEverythingOnItsCircuitOff()
    {
        var rig = LitRig();
        rig.Set(Sense, 0);
        rig.ScanFor(Duration.FromSeconds(1));

        Assert.All(rig.Site.Loads, load => Assert.False(rig.IsOn(load.Name)));
        Assert.Equal("the supply of the circuit is lost", rig.Why("north/fan").Summary);
    }

    [Fact]
    public void OneSampleOfNoSupplyIsAGlitch()
    {
        var rig = LitRig();
        rig.Set(Sense, 0);
        rig.Scan();
        rig.Set(Sense, 1);
        rig.ScanFor(Duration.FromSeconds(5));

        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.DoesNotContain(rig.Events, e => e.Subject == "sockets/supply-lost");
    }

    [Fact]
    public void ASupplyThatComesBackIsFollowedByAQuietPeriodAndOneLoadAtATime()
    {
        var rig = LitRig();
        rig.Set(Sense, 0);
        rig.LeapFor(Duration.FromMinutes(20));
        rig.Set(Sense, 1);
        var back = rig.Now.Monotonic;

        rig.LeapUntil(() => rig.IsOn("north/tier 2 light"));

        var on = rig.Events.Where(e => e.Kind == EventKind.Load && e.What == "on" && e.At.Monotonic > back).ToList();
        Assert.Equal(["north/aerator", "north/fan", "north/tier 1 light", "north/tier 2 light"], on.Select(e => e.Subject));

        // 2 s for the contact, 60 s of quiet, then 10 s from load to load.
        Assert.Equal(
            [62.1, 72.1, 82.1, 92.1],
            on.Select(e => Math.Round((e.At.Monotonic - back).TotalSeconds, 1)));
    }

    [Fact]
    public void AfterTheRestartLoadsFollowEachOtherAtTheOrdinaryStagger()
    {
        var rig = LitRig();
        rig.Set(Sense, 0);
        rig.LeapFor(Duration.FromMinutes(20));
        rig.Set(Sense, 1);
        rig.LeapUntil(() => rig.IsOn("north/tier 2 light"));
        rig.Scan(new Stop("Ada", null));
        rig.LeapFor(Duration.FromMinutes(1));

        rig.Scan(new Resume("Ada", null));
        var resumed = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.IsOn("north/tier 2 light"));

        Assert.Equal(Duration.FromSeconds(1), rig.Now.Monotonic - resumed);
    }

    [Fact]
    public void ThreeLossesWithinADayLatchTheCircuit()
    {
        var rig = LitRig();
        for (var loss = 0; loss < 3; loss++)
        {
            rig.Set(Sense, 0);
            rig.LeapFor(Duration.FromMinutes(5));
            rig.Set(Sense, 1);
            rig.LeapFor(Duration.FromMinutes(10));
        }

        Assert.All(rig.Site.Loads, load => Assert.False(rig.IsOn(load.Name)));
        Assert.Equal("the supply was lost 3 times within 24 h", rig.Why("north/aerator").Summary);

        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.Equal("the supply was lost 3 times within 24 h", rig.Why("north/aerator").Summary);
    }

    [Fact]
    public void ACircuitThatMayNotLoseItsSupplyAtAllLatchesAtTheFirstLoss()
    {
        var rig = new Rig(Sites.OneRack().WithLimits(limits => limits with { SupplyTripsToLatch = 1 }));
        rig.Set(Sense, 0);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Set(Sense, 1);
        rig.LeapFor(Duration.FromHours(1));

        Assert.Equal("the supply was lost once within 24 h", rig.Why("north/aerator").Summary);
    }

    [Fact]
    public void ABootAfterAnEarlierRunIsQuietFirst()
    {
        var rig = LitRig();
        rig.Restart(Duration.FromMinutes(3));
        var booted = rig.Now.Monotonic;
        rig.Scan();
        Assert.False(rig.IsOn("north/aerator"));

        rig.LeapUntil(() => rig.IsOn("north/aerator"));

        Assert.Equal(Duration.FromSeconds(60), rig.Now.Monotonic - booted);
    }

    [Fact]
    public void AnUnknownSupplySenseLeavesTheAeratorOn()
    {
        var rig = LitRig();
        rig.Silence(Sense);
        rig.LeapFor(Duration.FromHours(1));

        Assert.True(rig.IsOn("north/aerator"));
        Assert.NotNull(rig.Alarm($"{Sense}/reading-unknown"));
    }

    [Fact]
    public void RestartsBecauseInputsFailNeverTakeTheAeratorsAir()
    {
        // A supervisor restarts a controller whose inputs fail long before the quiet period is over, again and again.
        var rig = LitRig();
        rig.Conditions = ScanConditions.Good with { Io = new IoOutcome("chip floats is gone") };
        for (var restart = 0; restart < 5; restart++)
        {
            rig.Restart(Duration.FromSeconds(2));
            for (var scan = 0; scan < 100; scan++)
            {
                rig.Scan();
                Assert.True(rig.IsOn("north/aerator"));
            }
        }

        rig.Set(Sense, 0);
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.False(rig.IsOn("north/aerator"));
    }

    [Theory]
    [InlineData("a line does not follow", 0)]
    [InlineData(null, 2_000)]
    public void RestartsBecauseOutputsFailOrScansComeLateNeverTakeTheAirNorClickARelay(string? fault, int lateByMs)
    {
        // Whoever has just started can only presume that outputs work; a supervisor starts it anew after ten seconds.
        var rig = LitRig();
        var failing = new ScanConditions(new IoOutcome(fault), Duration.FromMilliseconds(lateByMs));
        rig.Conditions = failing;
        rig.ScanFor(Duration.FromSeconds(10));
        for (var restart = 0; restart < 5; restart++)
        {
            rig.Conditions = ScanConditions.Good;
            rig.Restart(Duration.FromSeconds(2));
            rig.Scan();
            Assert.True(rig.IsOn("north/aerator"));
            rig.Conditions = failing;
            for (var scan = 0; scan < 100; scan++)
            {
                rig.Scan();
                Assert.True(rig.IsOn("north/aerator"));
                Assert.True(rig.IsOn("north/fan"));
                Assert.False(rig.IsOn("north/tier 1 light"));
            }
        }

        Assert.DoesNotContain(rig.Events, each => each is { Kind: EventKind.Load, What: "off", Subject: "north/aerator" or "north/fan" });

        // Once they work, what is on goes on, and the rest comes back after the quiet period.
        rig.Conditions = ScanConditions.Good;
        rig.LeapUntil(() => rig.IsOn("north/tier 2 light"));
        Assert.True(rig.IsOn("north/aerator"));
        rig.LeapFor(Duration.FromMinutes(5));
        rig.Restart(Duration.FromMinutes(3));
        rig.Scan();
        Assert.False(rig.IsOn("north/aerator"));
    }

    [Fact]
    public void RestartsDuringALossAreOneLoss()
    {
        var rig = LitRig();
        rig.Set(Sense, 0);
        rig.LeapFor(Duration.FromMinutes(5));
        for (var restart = 0; restart < 3; restart++)
        {
            rig.Restart(Duration.FromMinutes(1));
            rig.LeapFor(Duration.FromMinutes(5));
        }

        rig.Set(Sense, 1);
        rig.LeapUntil(() => rig.IsOn("north/aerator"));
    }

    [Fact]
    public void ACircuitKnownToBeLostStaysLostAcrossARestartWhileItsSenseIsUnknown()
    {
        var rig = LitRig();
        rig.Set(Sense, 0);
        rig.LeapFor(Duration.FromMinutes(5));
        rig.Silence(Sense);
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(10));

        Assert.Equal("the supply of the circuit is lost", rig.Why("north/fan").Summary);
    }

    private static Rig LitRig()
    {
        var rig = new Rig(Sites.OneRack().WithSchedule(s => s with { Floods = s.Floods with { Times = new NoFloods() } }));
        rig.LeapUntil(() => rig.IsOn("north/tier 2 light"));
        rig.LeapFor(Duration.FromMinutes(1));
        return rig;
    }
}
