using NodaTime;
using RackController.Control.Tests.Interlocks;
using RackController.Model;

namespace RackController.Control.Tests.Sensing;

/// <summary>What several sensors see of a fill: row no-fill tells.</summary>
public class FillWatchTests
{
    [Fact]
    public void TwoMetersThatSeeTheSameFlowAndLoseItAreAsGoodAsOne()
    {
        var rig = new Rig(NoFillTests.With(SensorKind.PumpFlow, SensorKind.PumpFlow));
        SetBoth(0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        SetBoth(30);
        rig.LeapFor(Duration.FromMinutes(4));
        Assert.True(rig.IsOn("north/pump"));
        SetBoth(1);
        rig.LeapFor(Duration.FromSeconds(26));
        Assert.False(rig.IsOn("north/pump"));

        void SetBoth(double flowLpm)
        {
            rig.Set("north/flow", flowLpm);
            rig.Set("north/flow 2", flowLpm);
        }
    }

    [Fact]
    public void WhatASensorSawInTheFloodBeforeIsNothingOnceItIsUnknown()
    {
        var rig = new Rig(NoFillTests.With(SensorKind.PumpFlow, SensorKind.TrayLevel));
        rig.Set("north/flow", 0);
        rig.Set("north/depth", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set("north/depth", 30);
        rig.Set("north/flow", 30);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        Assert.Null(rig.Alarm("north/no-fill"));
        rig.Set("north/depth", 0);
        rig.Set("north/flow", 0);
        rig.Silence("north/depth");
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromSeconds(26));
        Assert.NotNull(rig.Alarm("north/no-fill"));
    }
}
