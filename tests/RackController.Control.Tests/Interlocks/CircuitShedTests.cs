using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row circuit-shed. Which load has to wait is tested with admission.</summary>
public class CircuitShedTests
{
    private const string Key = "sockets/circuit-shed";

    // Aerator, fan and two lights: 5 + 12 + 2 x 80 W at 120 V.
    private const double AllA = 177 / 120.0;

    [Fact]
    public void MoreThanTheCircuitMayCarryIsToldOf()
    {
        var rig = RigWithLimit(AllA - 0.01);
        rig.ScanFor(Duration.FromSeconds(10));

        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.False(rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void ExactlyWhatTheCircuitMayCarryIsNot()
    {
        var rig = RigWithLimit(AllA);
        rig.LeapFor(Duration.FromHours(5));

        Assert.DoesNotContain(rig.Events, e => e.Subject == Key);
    }

    [Fact]
    public void TheAlarmReturnsOnceLessIsWanted()
    {
        var rig = RigWithLimit(AllA - 0.01);
        rig.ScanFor(Duration.FromSeconds(10));

        // The photoperiod ends at 22:00, ten hours on.
        rig.LeapFor(Duration.FromHours(11));

        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void AfterARestartItIsJudgedAnew()
    {
        var rig = RigWithLimit(AllA - 0.01);
        rig.ScanFor(Duration.FromSeconds(10));
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(3));

        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        Assert.False(rig.IsOn("north/tier 2 light"));
    }

    private static Rig RigWithLimit(double limitA)
    {
        var site = Sites.OneRack().WithSchedule(s => s with { Floods = s.Floods with { Times = new NoFloods() } });
        return new Rig(site with { Circuits = [site.Circuits[0] with { ContinuousLimitA = limitA }] });
    }
}
