using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class ScanLoopTests : IDisposable
{
    private static readonly Duration LongEnoughToSettle = Duration.FromMinutes(2);

    private readonly ScanRig rig = new();

    [Fact]
    public void ALitTierIsLit()
    {
        rig.Run(LongEnoughToSettle);

        Assert.True(rig.Rack.IsOn(rig.Site.LoadNamed("north/tier 1 light")));
        Assert.False(rig.Rack.IsOn(rig.Site.LoadNamed("north/pump")));
    }

    [Fact]
    public void EveryGoodScanFeedsTheWatchdogOnce()
    {
        for (var scan = 1; scan <= 20; scan++)
        {
            rig.ScanOnce();
            Assert.Equal(scan, rig.GoodScans);
        }
    }

    [Fact]
    public void AScanWhoseInputsFailIsNoSignOfLife()
    {
        rig.Run(LongEnoughToSettle);
        var good = rig.GoodScans;
        rig.Rack.ReadOutcome = new IoOutcome("the chip is gone");

        rig.ScanOnce();

        Assert.Equal(good, rig.GoodScans);
        Assert.True(rig.Rack.IsSafe);
    }

    [Fact]
    public void AScanWhoseOutputsFailIsNoSignOfLifeAndTheNextOneAsksForTheSafeState()
    {
        rig.Run(LongEnoughToSettle);
        var good = rig.GoodScans;
        rig.Rack.WriteOutcome = new IoOutcome("the relay board is gone");

        rig.ScanOnce();
        rig.ScanOnce();

        Assert.Equal(good, rig.GoodScans);
        Assert.True(rig.Rack.IsSafe);
    }

    [Fact]
    public void ALateScanPutsEveryLoadInItsSafeStateAndFeedsNoWatchdog()
    {
        rig.Run(LongEnoughToSettle);
        var good = rig.GoodScans;
        rig.Clock.Advance(rig.Site.Scan.LateAfter + Duration.FromMilliseconds(1));

        rig.ScanOnce();

        Assert.Equal(good, rig.GoodScans);
        Assert.True(rig.Rack.IsSafe);
        Assert.Contains(rig.Events, happened => happened.Subject == "controller/scan-fault");
    }

    [Fact]
    public void AScanJustInsideItsTimeIsNotLate()
    {
        rig.Run(LongEnoughToSettle);
        var good = rig.GoodScans;
        rig.Clock.Advance(rig.Site.Scan.LateAfter);

        rig.ScanOnce();

        Assert.Equal(good + 1, rig.GoodScans);
        Assert.False(rig.Rack.IsSafe);
    }

    [Fact]
    public void RequestsAreTakenByTheNextScan()
    {
        rig.Run(LongEnoughToSettle);

        Assert.True(rig.Requests.TryAdd(new Stop("somebody", null)));
        rig.ScanOnce();

        Assert.True(rig.Rack.IsSafe);
        Assert.Contains(rig.Events, happened => happened.Kind == EventKind.Request);
    }

    [Fact]
    public void WhatHappenedIsHandedOverBeforeTheRelaysMove()
    {
        var handedOver = -1;
        rig.Rack.Writing = () => handedOver = handedOver < 0 && rig.Events.Any(IsLightOn) ? rig.Rack.WriteCount : handedOver;

        rig.Run(LongEnoughToSettle);

        Assert.True(handedOver >= 0);
        var light = rig.Site.LoadNamed("north/tier 1 light");
        Assert.Equal(handedOver, Enumerable.Range(0, rig.Rack.WriteCount).First(write => rig.Rack.WasOn(write, light)));

        static bool IsLightOn(ControlEvent happened) => happened is { Subject: "north/tier 1 light", What: "on" };
    }

    [Fact]
    public void ASignOfLifeIsHandedOverEveryFewSecondsAlthoughNothingHappens()
    {
        rig.Run(LongEnoughToSettle);
        var before = rig.Memories.Count;

        rig.Run(ScanLoop.HeartbeatEvery * 4);

        Assert.Equal(4, rig.Memories.Count - before);
    }

    [Fact]
    public void SignsOfLifeAreUrgentWhileAPumpRunsAndAtNoOtherTime()
    {
        var pump = rig.Site.LoadNamed("north/pump");
        rig.Run(LongEnoughToSettle);
        rig.Requests.TryAdd(new FloodNow("somebody", new RackId(0)));
        for (var scan = 0; scan < 50_000 && !rig.Rack.IsOn(pump); scan++)
        {
            Assert.Equal(0, rig.UrgentSigns);
            rig.ScanOnce();
        }

        rig.Run(ScanLoop.HeartbeatEvery * 4);

        Assert.True(rig.Rack.IsOn(pump));
        Assert.InRange(rig.UrgentSigns, 4, 5);
    }

    [Fact]
    public async Task APictureIsMadeByTheScanAfterSomebodyAsked()
    {
        rig.ScanOnce();
        var asked = rig.Board.Ask();
        Assert.False(asked.IsCompleted);

        rig.ScanOnce();

        Assert.True(asked.IsCompletedSuccessfully);
        var picture = await asked;
        Assert.Equal(rig.Site.Loads.Length, picture.Loads.Length);
        Assert.Equal(2, picture.Health.Scans);
    }

    [Fact]
    public void ASteadyScanAllocatesNothing()
    {
        rig.Rack.Remembers = false;
        rig.Run(LongEnoughToSettle + ScanLoop.HeartbeatEvery);
        rig.Loop.ScanOnce();
        while (rig.Memories[^1].SavedAt != rig.Clock.Now().Wall)
        {
            rig.ScanOnce();
            rig.Loop.ScanOnce();
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var scan = 0; scan < 40; scan++)
        {
            rig.ScanOnce();
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void MemorySurvivesARestartAndThePumpRestsAnew()
    {
        rig.Run(Duration.FromMinutes(1));
        rig.Requests.TryAdd(new FloodNow("somebody", new RackId(0)));
        rig.Run(Duration.FromMinutes(30));
        Assert.Contains(rig.Events, happened => happened is { Subject: "north/pump", What: "off" });

        using var restarted = new ScanRig(rig.Site, rig.Memories[^1]);
        restarted.Run(Duration.FromMinutes(2));
        restarted.Requests.TryAdd(new FloodNow("somebody", new RackId(0)));
        restarted.Run(Duration.FromMinutes(1));

        Assert.False(restarted.Rack.IsOn(rig.Site.LoadNamed("north/pump")));
        Assert.Contains(
            restarted.Control.Why()[0].Interlocks, words => words.Contains("the pump rests", StringComparison.Ordinal));
    }

    [Fact]
    public void AServiceThatIsStartedAnewAgainAndAgainBecauseItsOutputsFailSwitchesNothing()
    {
        rig.Run(LongEnoughToSettle);
        rig.Rack.WriteOutcome = new IoOutcome("north/pump: the line does not follow");
        rig.Run(Duration.FromSeconds(10));
        var memory = rig.Memories[^1];
        for (var restart = 0; restart < 3; restart++)
        {
            using var restarted = new ScanRig(rig.Site, memory);
            restarted.Rack.WriteOutcome = rig.Rack.WriteOutcome;
            restarted.Run(Duration.FromSeconds(10));
            memory = restarted.Memories[^1];
            Assert.All(Enumerable.Range(0, restarted.Rack.WriteCount), write => Assert.All(
                rig.Site.Loads, load => Assert.Equal(load.SafeState == SwitchState.On, restarted.Rack.WasOn(write, load.Id))));
        }
    }

    public void Dispose() => rig.Dispose();
}
