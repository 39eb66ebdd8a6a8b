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

    [Fact]
    public void AMeterThatShowsNothingIsEnoughWhereTheLevelCannotBeBelieved()
    {
        var rig = new Rig(NoFillTests.With(SensorKind.PumpFlow, SensorKind.ReservoirLevel));
        rig.Set("north/flow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Silence("north/level");
        rig.LeapFor(Duration.FromSeconds(26));
        Assert.False(rig.IsOn("north/pump"));
    }

    [Fact]
    public void ALevelThatWasUnknownInAFloodIsNotAccusedOfStandingStill()
    {
        var rig = new Rig(NoFillTests.With(SensorKind.PumpFlow, SensorKind.ReservoirLevel));
        rig.Set("north/flow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Silence("north/level");
        rig.LeapFor(Duration.FromSeconds(10));
        rig.Set("north/flow", 30);
        rig.LeapFor(Duration.FromSeconds(26));
        Assert.True(rig.IsOn("north/pump"));
        rig.Speak("north/level");
        rig.LeapFor(Duration.FromSeconds(10));
        Assert.DoesNotContain(rig.Events, each => each.Because.Contains("stood still", StringComparison.Ordinal));
        Assert.Equal("known", rig.Events.Last(each => each is { Kind: EventKind.Reading, Subject: "north/level" }).What);
    }

    /// <summary>Its noise keeps it from standing still to the last bit.</summary>
    [Fact]
    public void AMeterThatNeverSawTheWaterCannotTakeBackWhatTheLevelSaw()
    {
        var rig = new Rig(NoFillTests.With(SensorKind.PumpFlow, SensorKind.ReservoirLevel));
        rig.Set("north/flow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set("north/flow", 0.5);
        rig.Set("north/level", 150);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        Assert.Null(rig.Alarm("north/no-fill"));
    }

    [Fact]
    public void AMeterThatFrozeInOneFloodIsUnknownAfterTheNext()
    {
        var rig = new Rig(NoFillTests.With(SensorKind.PumpFlow, SensorKind.ReservoirLevel));
        rig.Set("north/flow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set("north/flow", 30);
        rig.Set("north/level", 150);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.Set("north/level", 200);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set("north/level", 150);
        rig.LeapFor(Duration.FromSeconds(30));
        Assert.Equal("unknown", rig.Events.Last(each => each is { Kind: EventKind.Reading, Subject: "north/flow" }).What);
    }

    /// <summary>A tray counts as drained below 3 mm.</summary>
    [Theory]
    [InlineData(2.9, "known")]
    [InlineData(3, "unknown")]
    public void ATrayLevelThatStandsStillMayDoSoOnlyWhereTheTrayIsDrained(double depthMm, string what)
    {
        var rig = new Rig(NoFillTests.With(SensorKind.PumpFlow, SensorKind.TrayLevel));
        rig.Set("north/flow", 0);
        rig.Set("north/depth", depthMm);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set("north/flow", 30);
        rig.LeapFor(Duration.FromSeconds(30));
        Assert.Equal(what, rig.Events.Last(each => each is { Kind: EventKind.Reading, Subject: "north/depth" }).What);
    }
}
