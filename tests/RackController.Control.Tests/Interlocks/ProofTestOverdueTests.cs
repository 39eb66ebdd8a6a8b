using RackController.Model;

using NodaTime;
using RackController.Control.Tests.ProofTests;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row proof-test-overdue.</summary>
public class ProofTestOverdueTests
{
    private const string Key = "sockets/proof-test-overdue";

    [Fact]
    public void ANewRackHasOneAlarmForAllItsTestsAndNoSoonerThanTheyAreDue()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromDays(14) - Duration.FromSeconds(1));
        Assert.Null(rig.Alarm("north/proof-test-overdue"));
        rig.LeapFor(Duration.FromSeconds(1));
        Assert.Equal(
            "11 proof tests are overdue, that of north/reservoir low float first", rig.Alarm("north/proof-test-overdue")!.Cause);
        Assert.Equal("the proof test of sockets/supply sense is overdue", rig.Alarm(Key)!.Cause);
        Assert.Equal(AlarmPriority.Low, rig.Alarm(Key)!.Priority);
    }

    [Fact]
    public void ItSwitchesNothing()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromDays(15));
        Assert.Empty(rig.Why("north/tier 1 light").Interlocks);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    [Fact]
    public void ItReturnsOnceEveryTestOfThePlaceIsPassed()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromDays(15));
        rig.TestContact("sockets/supply sense");
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
        Assert.Equal("no proof test is overdue", rig.Alarm(Key)!.Cause);
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/proof-test-overdue")!.State);
    }

    [Fact]
    public void ARestartDoesNotMakeItForget()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromDays(10));
        rig.Restart(Duration.FromDays(5));
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
    }
}
