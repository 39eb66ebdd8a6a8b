using RackController.Model;

using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row clock-untrusted. What schedules do meanwhile is tested with the demands.</summary>
public class ClockUntrustedTests
{
    private const string Key = "controller/clock-untrusted";

    [Fact]
    public void AnUntrustedClockIsToldOfUntilItIsTrustedAgain()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan();
        Assert.Null(rig.Alarm(Key));

        rig.TrustWall(false);
        rig.Scan();
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        Assert.Equal(AlarmPriority.Low, rig.Alarm(Key)!.Priority);

        rig.TrustWall(true);
        rig.Scan();
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void ABootWithoutATrustedClockIsToldOfAtItsFirstScan()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan();
        rig.Restart(Duration.FromMinutes(1), wallTrusted: false);
        rig.Scan();

        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
    }
}
