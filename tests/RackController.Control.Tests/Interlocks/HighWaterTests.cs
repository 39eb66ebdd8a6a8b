using RackController.Model;

using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row high-water.</summary>
public class HighWaterTests
{
    private const string Key = "north/high-water";

    [Theory]
    [InlineData("north/tier 2 high float")]
    [InlineData("north/leak rope")]
    public void WaterWhereItMustNotBeCutsPumpAndValvesAndLatches(string sensor)
    {
        var rig = FloodingRig();
        rig.Set(sensor, 1);
        rig.Scan();
        rig.Scan();
        Assert.False(rig.IsOn("north/pump"));
        Assert.False(rig.IsOn("north/tier 1 valve"));
        Assert.True(rig.IsOn("north/fan"));

        rig.Set(sensor, 0);
        rig.LeapFor(Duration.FromDays(2));

        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal(AlarmPriority.Critical, rig.Alarm(Key)!.Priority);
        Assert.Contains($"{sensor} was wet", rig.Alarm(Key)!.Cause);
    }

    [Theory]
    [InlineData("north/tier 2 high float")]
    [InlineData("north/leak rope")]
    public void OneSampleOfWetIsAGlitch(string sensor)
    {
        var rig = FloodingRig();
        rig.Set(sensor, 1);
        rig.Scan();
        rig.Set(sensor, 0);
        rig.ScanFor(Duration.FromSeconds(5));

        Assert.True(rig.IsOn("north/pump"));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void ThePumpReturnsOnceItIsDryAndSomebodyHasReset()
    {
        var rig = FloodingRig();
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Set("north/leak rope", 0);
        rig.LeapFor(Duration.FromMinutes(5));
        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Ada", Key));

        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    [Fact]
    public void ALatchWhoseCauseIsStillThereDoesNotGo()
    {
        var rig = FloodingRig();
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Ada", Key));

        Assert.StartsWith("confirm reset: the latch stays", rig.Events.Last(e => e.Kind == EventKind.Request).What);
        rig.LeapFor(Duration.FromHours(20));
        Assert.False(rig.IsOn("north/pump"));
    }

    [Fact]
    public void TheLatchSurvivesAPowerCut()
    {
        var rig = FloodingRig();
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Set("north/leak rope", 0);
        rig.Restart(Duration.FromDays(3));

        rig.LeapFor(Duration.FromDays(1));

        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal("a float or leak rope was wet; somebody must look and reset", rig.Alarm(Key)!.Cause);
        Assert.True(rig.IsOn("north/tier 1 light") || rig.Events.Any(e => e.Subject == "north/tier 1 light" && e.What == "on"));
    }

    [Fact]
    public void AnUnknownRopeForbidsThePumpWithoutLatching()
    {
        var site = Sites.OneRack();
        var rig = new Rig(site);
        rig.Silence("north/leak rope");
        rig.LeapFor(Duration.FromHours(26));

        Assert.DoesNotContain(rig.Events, e => e is { Subject: "north/pump", What: "on" });
        Assert.DoesNotContain(rig.Events, e => e is { Subject: Key, What: "latched" });
    }

    private static Rig FloodingRig()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(30));
        return rig;
    }
}
