using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row relay-welded. The pump of the site draws 45 W / 120 V = 0.375 A, and counts as running above 0.19 A.</summary>
public class RelayWeldedTests
{
    private const string Current = "north/pump current";
    private const string Key = "north/pump/relay-welded";

    [Fact]
    public void APumpThatRunsThoughItsRelayIsOffIsCutByTheContactor()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(2.9));
        Assert.False(rig.IsCut);

        rig.ScanFor(Duration.FromSeconds(0.3));
        Assert.True(rig.IsCut);
        Assert.All(rig.Site.Loads, load => Assert.False(rig.IsOn(load.Name)));
        var alarm = rig.Alarm(Key)!;
        Assert.Equal(AlarmPriority.Critical, alarm.Priority);
        Assert.Equal(
            "north/pump draws current though its relay is told off, and the contactor cuts sockets until somebody has looked and resets",
            alarm.Cause);
        Assert.Equal("the contactor of sockets is open", rig.Why("north/aerator").Summary);
        Assert.Contains(rig.Events, e => e is { Kind: EventKind.Load, Subject: "sockets/contactor", What: "open" });
    }

    [Fact]
    public void WithoutAContactorAPersonIsTold()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent());
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(4));
        Assert.False(rig.IsCut);
        Assert.True(rig.IsOn("north/aerator"));
        Assert.Equal("north/pump draws current though its relay is told off", rig.Alarm(Key)!.Cause);
    }

    [Fact]
    public void ACurrentBelowThatOfARunningPumpIsNone()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.Set(Current, 0.18);
        rig.ScanFor(Duration.FromMinutes(1));
        Assert.False(rig.IsCut);
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void TheCurrentOfAPumpThatWasJustSwitchedOffIsNotHeldAgainstIt()
    {
        var rig = Flooding();
        rig.Set(Current, 0.6);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(2));
        rig.Set(Current, 0);
        rig.ScanFor(Duration.FromSeconds(10));
        Assert.False(rig.IsCut);
    }

    [Fact]
    public void AnOldReadingOfARunningPumpProvesNothing()
    {
        var rig = Flooding();
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Ask(new HoldForService("Ada", new RackId(0), Duration.FromMinutes(5)));
        rig.Silence(Current);
        rig.Scan();
        Assert.False(rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(60));
        Assert.False(rig.IsCut);
    }

    [Fact]
    public void TheContactorClosesOnlyByAResetAndTheLoadsComeBackOneAtATime()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(4));
        rig.Set(Current, 0);
        rig.LeapFor(Duration.FromHours(1));
        Assert.True(rig.IsCut);
        Assert.StartsWith("north/pump drew current though its relay is told off", rig.Alarm(Key)!.Cause, StringComparison.Ordinal);

        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Ben", Key));
        var released = rig.Now.Monotonic;
        rig.LeapUntil(() => !rig.IsCut);
        var closed = rig.Now.Monotonic;
        Assert.Equal(rig.Site.Racks[0].Limits.StartDelay, closed - released);
        rig.LeapFor(Duration.FromMinutes(2));
        var on = rig.Events.Where(e => e.Kind == EventKind.Load && e.What == "on" && e.At.Monotonic >= closed).ToList();
        Assert.Equal("north/aerator", on[0].Subject);
        Assert.All(on.Zip(on.Skip(1)), pair => Assert.True(
            pair.Second.At.Monotonic - pair.First.At.Monotonic >= rig.Site.Racks[0].Limits.RestartSpacing));
    }

    [Fact]
    public void TheContactorStaysOpenWhileHandsAreInTheRackAndAMomentLonger()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(4));
        rig.Set(Current, 0);
        rig.Scan(new HoldForService("Ada", new RackId(0), Duration.FromMinutes(20)));
        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Ben", Key));
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.True(rig.IsCut);
        Assert.Equal("the contactor of sockets is open", rig.Why("north/aerator").Summary);

        rig.Scan(new EndServiceHold("Ada", new RackId(0)));
        var ended = rig.Now.Monotonic;
        rig.LeapUntil(() => !rig.IsCut);
        Assert.Equal(rig.Site.Racks[0].Limits.StartDelay, rig.Now.Monotonic - ended);
    }

    [Fact]
    public void TheContactorIsOpenedWhetherOrNotHandsAreInTheRack()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.Scan(new HoldForService("Ada", new RackId(0), Duration.FromMinutes(20)));
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(4));
        Assert.True(rig.IsCut);
    }

    [Fact]
    public void AResetWhileThePumpStillRunsThroughAWeldedContactorIsRefused()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.Set(Current, 0.6);
        rig.LeapUntil(() => rig.IsCut);
        var cut = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Alarm(Key)!.Cause.EndsWith("and the contactor does not cut it", StringComparison.Ordinal));
        Assert.InRange((rig.Now.Monotonic - cut).TotalSeconds, 3, 3.15);
        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Ben", Key));
        Assert.True(rig.IsCut);
    }

    [Fact]
    public void ARestartForgetsNoWeldedRelay()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(4));
        rig.Restart(Duration.FromSeconds(30));
        rig.Set(Current, 0);
        rig.Scan();
        Assert.True(rig.IsCut);
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.True(rig.IsCut);
    }

    [Fact]
    public void WhileOutputsFailTheContactorIsOpenedBeforeASupervisorActsAndStaysOpen()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.Conditions = new ScanConditions(new IoOutcome("a line does not follow"), Duration.Zero);
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(3.9));
        Assert.False(rig.IsCut);
        rig.ScanFor(Duration.FromSeconds(0.3));
        Assert.True(rig.IsCut);

        // The cut works, so nothing flows any more.
        rig.Set(Current, 0);
        rig.ScanFor(Duration.FromMinutes(5));
        Assert.True(rig.IsCut);
        rig.Conditions = ScanConditions.Good;
        rig.ScanFor(Duration.FromMinutes(1));
        Assert.Single(rig.Events, e => e.Subject == "sockets/contactor");
    }

    [Fact]
    public void WithoutAContactorACurrentWhileOutputsFailCallsForNoReset()
    {
        var rig = Quiet(Sites.OneRack().WithPumpCurrent());
        rig.Conditions = new ScanConditions(new IoOutcome("a line does not follow"), Duration.Zero);
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.NotNull(rig.Alarm(Key));

        rig.Conditions = ScanConditions.Good;
        rig.Set(Current, 0);
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.DoesNotContain(rig.Events, e => e is { Kind: EventKind.Interlock, What: "latched" });
    }

    private static Rig Quiet(Site site)
    {
        var rig = new Rig(site);
        rig.ScanFor(Duration.FromSeconds(20));
        Assert.False(rig.IsOn("north/pump"));
        return rig;
    }

    private static Rig Flooding()
    {
        var rig = new Rig(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        return rig;
    }
}
