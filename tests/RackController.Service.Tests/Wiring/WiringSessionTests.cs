using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class WiringSessionTests : IDisposable
{
    private static readonly Site site = Sites.OneRack();

    private readonly TemporaryFolder folder = new();
    private readonly RecordingRack rack = new(site);
    private readonly StillClock clock = new();
    private readonly CountingWatchdog watchdog = new();
    private readonly List<WiringResult> recorded = [];

    public void Dispose() => folder.Dispose();

    [Fact]
    public void AWalkThatIsEndedWhileALoadIsOnLeavesItOff()
    {
        using var end = new CancellationTokenSource();
        var scans = 0;
        Walk(page =>
        {
            if (rack.IsOn(site.LoadNamed("north/tier 1 light")))
            {
                end.Cancel();
            }

            return page.Name == "north/tier 1 light" ? (scans++ == 0 ? 'G' : null) : 'S';
        }, end.Token);
        Assert.True(end.IsCancellationRequested);
        Assert.True(rack.IsSafe);
    }

    [Fact]
    public void AnOutputThatFailsEndsTheWalkWithOneLine()
    {
        var refused = Assert.Throws<CouldNotRunException>(() => Walk(_ =>
        {
            rack.WriteOutcome = new IoOutcome("line 3 cannot be written");
            return null;
        }, CancellationToken.None));
        Assert.Equal("line 3 cannot be written: a load may not be in its safe state: cut the supply by hand", refused.Message);
        Assert.True(rack.IsSafe);
    }

    [Fact]
    public void ThePersonThatFailsLeavesNothingOn()
    {
        Assert.Throws<InvalidOperationException>(() => Walk(page =>
            rack.IsOn(site.LoadNamed("north/tier 1 light")) ? throw new InvalidOperationException()
            : page.Name == "north/tier 1 light" ? (page.Keys[0].Key == 'G' ? 'G' : null) : 'S', CancellationToken.None));
        Assert.True(rack.IsSafe);
    }

    [Fact]
    public void EveryGoodScanFeedsTheHeartbeat()
    {
        var pages = 0;
        Walk(_ => ++pages == 7 ? 'Q' : null, CancellationToken.None);

        // The one that takes the key is the last.
        Assert.Equal(8, watchdog.Scans);
    }

    [Fact]
    public void WhatWasAnsweredIsOnRecordAndWhatWasSkippedIsNot()
    {
        var number = 0;
        Walk(page => number++ == 0 ? 'N' : page.Name == "north/pump" ? 'Q' : 'S', CancellationToken.None);
        Assert.Equal(["north/reservoir low float"], recorded.Select(result => result.Name));
    }

    [Fact]
    public void TheJournalTellsOfAWalk()
    {
        var state = new StateFolder(folder.Path);
        var pages = 0;
        var results = WiringSession.Walk(site, state, "somebody", _ => pages++ == 0 ? 'N' : 'Q', CancellationToken.None);
        Assert.Equal(WiringOutcome.Wrong, results[0].Outcome);
        Assert.StartsWith("somebody walked through the wiring: ", Assert.Single(JournalReader.Events(state.Journal)));
    }

    [Fact]
    public void ARackThatIsDrivenIsNotWalkedThrough()
    {
        var state = new StateFolder(folder.Path);
        using var held = RackLock.Take(state.Lock);
        Assert.Contains("already drives this rack", Assert.Throws<CouldNotRunException>(
            () => WiringSession.Walk(site, state, "somebody", _ => 'Q', CancellationToken.None)).Message);
    }

    private IReadOnlyList<WiringResult> Walk(Func<WiringPage, char?> person, CancellationToken end) =>
        WiringSession.Walk(site, rack, watchdog, clock, person, recorded.Add, end);

    private sealed class CountingWatchdog : IWatchdog
    {
        public int Scans { get; private set; }

        public void GoodScan(MonotonicTime now) => Scans++;
    }
}
