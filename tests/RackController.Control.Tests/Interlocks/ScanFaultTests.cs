using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row scan-fault.</summary>
public class ScanFaultTests
{
    [Fact]
    public void AScanJustWithinItsLimitChangesNothing()
    {
        var rig = LitRig();
        rig.Conditions = ScanConditions.Good with { LateBy = Duration.FromSeconds(1) };
        rig.Scan();

        Assert.True(rig.IsOn("north/tier 1 light"));
    }

    [Fact]
    public void ALateScanPutsEveryLoadInItsSafeStateUntilScansHaveBeenGoodForAWhile()
    {
        var rig = LitRig();
        rig.Conditions = ScanConditions.Good with { LateBy = Duration.FromSeconds(1.1) };
        rig.Scan();
        Assert.All(rig.Site.Loads, load => Assert.Equal(load.SafeState == SwitchState.On, rig.IsOn(load.Name)));
        var late = rig.Now.Monotonic;

        rig.Conditions = ScanConditions.Good;
        rig.LeapUntil(() => rig.IsOn("north/tier 1 light"));

        Assert.Equal(Duration.FromSeconds(10), rig.Now.Monotonic - late);
    }

    [Fact]
    public void FailingOutputsAreSaidInTheWordsOfWhoeverFoundThem()
    {
        var rig = LitRig();
        rig.Conditions = ScanConditions.Good with { Io = new IoOutcome("chip relays is gone") };
        rig.Scan();

        Assert.StartsWith("chip relays is gone", rig.Alarm("controller/scan-fault")!.Cause);
        Assert.StartsWith("chip relays is gone", rig.Why("north/tier 1 light").Summary, StringComparison.Ordinal);
        Assert.StartsWith("chip relays is gone", rig.Why("north/aerator").Summary, StringComparison.Ordinal);

        // What would forbid it anyhow comes first.
        Assert.StartsWith("the pump rests until", rig.Why("north/pump").Summary, StringComparison.Ordinal);
        Assert.False(rig.IsOn("north/tier 1 light"));
        Assert.True(rig.IsOn("north/aerator"));
    }

    [Fact]
    public void AFaultIsJudgedAnewAfterARestartSinceNothingWasOnMeanwhile()
    {
        var rig = LitRig();
        var fault = ScanConditions.Good with { Io = new IoOutcome("chip relays is gone") };
        rig.Conditions = fault;
        rig.Scan();
        rig.Restart(Duration.FromMinutes(1));
        rig.Scan();
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("controller/scan-fault")!.State);

        rig.Conditions = ScanConditions.Good;
        rig.Restart(Duration.FromMinutes(1));
        rig.Scan();
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm("controller/scan-fault")!.State);
        rig.LeapUntil(() => rig.IsOn("north/tier 1 light"));
    }

    private static Rig LitRig()
    {
        var rig = new Rig(Sites.OneRack().WithSchedule(s => s with { Floods = s.Floods with { Times = new NoFloods() } }));
        rig.LeapFor(Duration.FromMinutes(1));
        return rig;
    }
}
