using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row flood-held.</summary>
public class FloodHeldTests
{
    private const string Key = "north/flood-held";

    [Fact]
    public void AFloodThatWaitsForTwiceTheRestIsToldOf()
    {
        var rig = WaitingRig();
        var due = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        Assert.Equal(Duration.FromMinutes(30), rig.Now.Monotonic - due);
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        Assert.StartsWith("a flood has waited since 13:00", rig.Alarm(Key)!.Cause);
    }

    [Fact]
    public void TheAlarmReturnsOnceTheFloodBegins()
    {
        var rig = WaitingRig();
        rig.LeapFor(Duration.FromMinutes(40));
        rig.Set("north/reservoir low float", 1);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();

        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void ARestartBeginsTheWaitAnew()
    {
        var rig = WaitingRig();
        rig.LeapFor(Duration.FromMinutes(25));
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(29));
        Assert.Null(rig.Alarm(Key));

        rig.LeapFor(Duration.FromMinutes(2));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
    }

    /// <summary>A rack whose flood of 13:00 has just become due and finds the reservoir dry; the pump's rest is 15 min.</summary>
    private static Rig WaitingRig()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Set("north/reservoir low float", 0);
        rig.LeapUntil(() => rig.Control.FloodPhase(new RackId(0)) == FloodPhase.Waiting);
        return rig;
    }
}
