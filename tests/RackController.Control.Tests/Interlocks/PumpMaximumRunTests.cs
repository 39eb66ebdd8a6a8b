using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row pump-maximum-run.</summary>
public class PumpMaximumRunTests
{
    private const string Key = "north/pump-maximum-run";

    [Fact]
    public void APumpThatRanItsMaximumIsCut()
    {
        var rig = FloodingRig();
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(119.9));
        Assert.True(rig.IsOn("north/pump"));

        rig.Scan();

        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal("the pump ran its maximum of 2 min", rig.Why("north/pump").Summary);
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void APumpThatRanItsMaximumRestsBeforeItStartsAgain()
    {
        var rig = FloodingRig();
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        var stopped = rig.Now.Monotonic;
        rig.Scan();
        rig.Scan(new FloodNow("Ada", new RackId(0)));

        rig.LeapFor(Duration.FromMinutes(9));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        rig.LeapUntil(() => rig.IsOn("north/pump"));

        Assert.Equal(Duration.FromMinutes(10), rig.Now.Monotonic - stopped);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void AMaximumRunIsSavedAtOnce()
    {
        var rig = FloodingRig();
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(119.9));
        var version = rig.Control.MemoryVersion;
        rig.Scan();

        // It and its alarm.
        Assert.Equal(2, rig.Control.MemoryVersion - version);
    }

    [Fact]
    public void ThreeMaximumRunsWithinADayLatch()
    {
        var rig = FloodingRig();
        for (var run = 0; run < 3; run++)
        {
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.LeapUntil(() => !rig.IsOn("north/pump"));
        }

        rig.LeapFor(Duration.FromHours(30));
        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        Assert.Equal("the pump ran its maximum of 2 min 3 times within 24 h", rig.Alarm(Key)!.Cause);
    }

    [Fact]
    public void OneMaximumRunADayNeverLatches()
    {
        var rig = FloodingRig(new FloodsAt([new LocalTime(13, 0)]));
        for (var day = 0; day < 6; day++)
        {
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.LeapUntil(() => !rig.IsOn("north/pump"));
        }

        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    [Fact]
    public void TheLatchLetsGoByTwoActionsAndOnlyThen()
    {
        var rig = FloodingRig();
        for (var run = 0; run < 3; run++)
        {
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.LeapUntil(() => !rig.IsOn("north/pump"));
        }

        rig.LeapFor(Duration.FromHours(1));
        rig.Scan(new ConfirmReset("Ada", Key));
        Assert.Contains("ask for the reset first", rig.Events[^1].What);

        rig.Scan(new ResetLatch("Ada", Key));
        rig.LeapFor(Duration.FromSeconds(61));
        rig.Scan(new ConfirmReset("Ada", Key));
        Assert.Contains("ask for the reset first", rig.Events.Last(e => e.Kind == EventKind.Request).What);

        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Bo", Key));
        Assert.Equal("confirm reset: the latch is released", rig.Events.Last(e => e.Kind == EventKind.Request).What);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    [Fact]
    public void AStepOfTheWallClockNeitherLengthensNorShortensARun()
    {
        foreach (var step in new[] { Duration.FromHours(-5), Duration.FromHours(5) })
        {
            var rig = FloodingRig();
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            var began = rig.Now.Monotonic;
            rig.ScanFor(Duration.FromSeconds(60));
            rig.StepWall(step);

            rig.LeapUntil(() => !rig.IsOn("north/pump"));

            Assert.Equal(Duration.FromMinutes(2), rig.Now.Monotonic - began);
        }
    }

    [Fact]
    public void TripsAreRememberedAcrossARestart()
    {
        var rig = FloodingRig();
        for (var run = 0; run < 3; run++)
        {
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.LeapUntil(() => !rig.IsOn("north/pump"));
            rig.LeapFor(Duration.FromSeconds(1));
            rig.Restart(Duration.FromMinutes(1));
        }

        rig.LeapFor(Duration.FromHours(20));
        Assert.Equal(3, rig.Events.Count(each => each is { Subject: "north/pump", What: "on" }));
        Assert.Contains(rig.Events, each => each is { Subject: Key, What: "latched" });
    }

    /// <summary>Floods that fill within the maximum run of two minutes and would soak on for long after it.</summary>
    private static Rig FloodingRig(FloodTimes? times = null) => new(Sites.OneRack()
        .WithLimits(limits => limits with
        {
            PumpMaximumRun = Duration.FromMinutes(2),
            PumpRest = Duration.FromMinutes(10),
        })
        .WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with
            {
                Times = times ?? new FloodsEvery(Duration.FromHours(1), LocalTime.Midnight, Duration.FromHours(24)),
                Fill = new FillForTime(Duration.FromMinutes(1)),
                Drain = Duration.FromMinutes(1),
            },
        }));
}
