using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row not-drained.</summary>
public class NotDrainedTests
{
    private const string Key = "north/not-drained";

    [Theory]
    [InlineData("north/full", 1, 0)]
    [InlineData("north/depth", 10.1, 10)]
    public void AFloodWaitsForATrayThatStillHoldsWaterAndBeginsByItselfWhenItHasDrained(string sensor, double wet, double drained)
    {
        var rig = RestingRig();
        rig.Set(sensor, wet);
        rig.LeapUntil(() => rig.Control.FloodPhase(new RackId(0)) == FloodPhase.Waiting);
        rig.LeapFor(Duration.FromMinutes(20));

        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal($"{sensor} still reads wet, so its tray has not drained", rig.Why("north/pump").Summary);
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);

        rig.Set(sensor, drained);
        rig.LeapFor(Duration.FromSeconds(10));
        Assert.True(rig.IsOn("north/pump"));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Theory]
    [InlineData("north/full", 0)]
    [InlineData("north/depth", 10)]
    public void OneThatHasJustDrainedHoldsNothing(string sensor, double drained)
    {
        var rig = RestingRig();
        rig.Set(sensor, drained);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void ATrayThatDrainsInItsTimeIsNoAlarmAndAFloodUnderWayGoesOn()
    {
        var rig = RestingRig();
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set("north/depth", 50);
        rig.Set("north/full", 1);
        rig.LeapFor(Duration.FromMinutes(9));
        Assert.True(rig.IsOn("north/pump"));

        rig.LeapFor(Duration.FromMinutes(5));
        Assert.Contains(rig.Why("north/pump").Interlocks, words => words.StartsWith("not-drained:", StringComparison.Ordinal));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void AnUnknownSensorAndATierOutOfUseHoldNothing()
    {
        var rig = RestingRig();
        rig.Set("north/full", 1);
        rig.Silence("north/full");
        rig.Set("north/depth", 50);
        rig.Scan(new SetTierInUse("Ada", new RackId(0), 1, InUse: false));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void ARestartStillHoldsTheFloodOfATrayThatIsWet()
    {
        var rig = RestingRig();
        rig.Set("north/depth", 50);
        rig.LeapUntil(() => rig.Control.FloodPhase(new RackId(0)) == FloodPhase.Waiting);
        rig.Restart(Duration.FromMinutes(10));
        rig.LeapFor(Duration.FromHours(6));
        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
    }

    // A float on the upper tray and a level on the lower one, both dry.
    private static Rig RestingRig()
    {
        var site = Sites.OneRack();
        var full = site.Sensors[0] with
        {
            Id = new SensorId(site.Sensors.Length),
            Name = "north/full",
            Kind = SensorKind.TrayFullFloat,
            TierNumber = 2,
        };
        var depth = full with
        {
            Id = new SensorId(site.Sensors.Length + 1),
            Name = "north/depth",
            Kind = SensorKind.TrayLevel,
            TierNumber = 1,
            PlausibleMax = 115,
        };
        var rig = new Rig(site with { Sensors = [.. site.Sensors, full, depth] });
        rig.Set("north/full", 0);
        rig.Set("north/depth", 0);
        rig.LeapFor(Duration.FromMinutes(16));
        return rig;
    }
}
