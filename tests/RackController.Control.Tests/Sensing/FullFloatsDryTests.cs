using NodaTime;
using RackController.Control.Tests.Interlocks;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Sensing;

/// <summary>Full floats speak against a fill only when it had all its time, and for one whenever they close.</summary>
public class FullFloatsDryTests
{
    private const string Key = "north/no-fill";

    [Fact]
    public void FullFloatsThatStayDryThroughAWholeFloodCountAsNoFillWhenItIsOver()
    {
        var rig = FloodedUntilFull(soak: Duration.FromMinutes(5));
        var started = rig.Now.Monotonic;
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        Assert.InRange((rig.Now.Monotonic - started).TotalMinutes, 10, 10.1);
        rig.Scan();
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);

        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set("north/full", 1);
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void AFillThatTookAllItsTimeAndNoSoakWasLongEnoughToTell()
    {
        var rig = FloodedUntilFull(soak: Duration.Zero);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.Scan();
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void AFillThatWasCutShortTellsNothing()
    {
        var rig = FloodedUntilFull(soak: Duration.Zero);
        rig.LeapFor(Duration.FromMinutes(4));
        rig.Scan(new Stop("Ada", null));
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.False(rig.IsOn("north/pump"));
        Assert.Null(rig.Alarm(Key));
    }

    // To be full within 5 min; the pump has just started.
    private static Rig FloodedUntilFull(Duration soak)
    {
        var rig = new Rig(NoFillTests.With(SensorKind.TrayFullFloat).WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(5), FullDepthMm: 40), Soak = soak },
        }));
        rig.Set("north/full", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        return rig;
    }
}
