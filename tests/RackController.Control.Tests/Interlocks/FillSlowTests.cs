using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row fill-slow.</summary>
public class FillSlowTests
{
    [Fact]
    public void AFillThatTakesItsLimitTellsAPersonAndGoesOn()
    {
        var rig = FillingRig();
        rig.LeapFor(Duration.FromMinutes(9));

        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/fill-slow")!.State);
        Assert.Equal(FloodPhase.Soaking, rig.Control.FloodPhase(new RackId(0)));
        Assert.True(rig.IsOn("north/pump"));
    }

    [Fact]
    public void AFillThatIsFullJustBeforeItsLimitTellsNobody()
    {
        var rig = FillingRig();
        rig.LeapFor(Duration.FromMinutes(7));
        rig.Set("north/tier 1 full float", 1);
        rig.LeapFor(Duration.FromMinutes(3));

        Assert.Equal(FloodPhase.Soaking, rig.Control.FloodPhase(new RackId(0)));
        Assert.Null(rig.Alarm("north/fill-slow"));
    }

    [Fact]
    public void TheNextGoodFillTakesTheAlarmBack()
    {
        var rig = FillingRig();
        rig.LeapFor(Duration.FromHours(1));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set("north/tier 1 full float", 1);
        rig.LeapFor(Duration.FromMinutes(1));

        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm("north/fill-slow")!.State);
    }

    [Fact]
    public void ARestartRemembersAFillThatTookItsLimit()
    {
        var rig = FillingRig();
        rig.LeapFor(Duration.FromMinutes(9));
        rig.Restart(Duration.FromMinutes(1));
        rig.Scan();

        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/fill-slow")!.State);
    }

    /// <summary>A rack of one tier that has just begun a fill by its full float, which is still dry.</summary>
    private static Rig FillingRig()
    {
        var site = Sites.OneRack(tiers: 1);
        var full = new SensorId(site.Sensors.Length);
        var high = site.Sensors.Single(sensor => sensor.Kind == SensorKind.TrayHighFloat);
        site = site with
        {
            Sensors =
            [
                .. site.Sensors,
                high with { Id = full, Name = "north/tier 1 full float", Kind = SensorKind.TrayFullFloat, HeightMm = 40 },
            ],
        };
        var rig = new Rig(site.WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(8), FullDepthMm: 40) },
        }));
        rig.Set("north/tier 1 full float", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        return rig;
    }
}
