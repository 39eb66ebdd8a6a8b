using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row dead-load of a pump, by the current in its wire.</summary>
public class LoadDeadTests
{
    private const string Current = "north/pump current";
    private const string Key = "north/pump/dead-load";

    [Fact]
    public void APumpThatIsToldOnAndDrawsNothingIsToldOf()
    {
        var rig = Flooding();
        rig.ScanFor(Duration.FromSeconds(2.9));
        Assert.Null(rig.Alarm(Key));
        rig.ScanFor(Duration.FromSeconds(0.3));
        Assert.Equal("north/pump was told on and drew no current", rig.Alarm(Key)!.Cause);
        Assert.True(rig.IsOn("north/pump"));
    }

    [Fact]
    public void APumpThatDrawsSomewhatMoreThanHalfOfItsNameplateRuns()
    {
        var rig = Flooding();
        rig.Set(Current, 0.19);
        rig.ScanFor(Duration.FromMinutes(1));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void TheAlarmReturnsOnceCurrentFlowsOrThePumpIsToldOff()
    {
        var rig = Flooding();
        rig.ScanFor(Duration.FromSeconds(4));
        rig.Set(Current, 0.6);
        rig.ScanFor(Duration.FromSeconds(4));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void ASilentSensorTellsNothing()
    {
        var rig = Flooding();
        rig.Silence(Current);
        rig.ScanFor(Duration.FromMinutes(1));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void ARestartForgetsADeadPumpUntilItIsToldOnAgain()
    {
        var rig = Flooding();
        rig.ScanFor(Duration.FromSeconds(4));
        rig.Restart(Duration.FromSeconds(10));
        rig.ScanFor(Duration.FromSeconds(10));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    private static Rig Flooding()
    {
        var rig = new Rig(Sites.OneRack().WithPumpCurrent());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        return rig;
    }
}
