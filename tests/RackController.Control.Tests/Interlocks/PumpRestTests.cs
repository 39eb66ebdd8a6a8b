using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row pump-rest.</summary>
public class PumpRestTests
{
    [Fact]
    public void ASecondFloodWaitsUntilThePumpHasRested()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        var stopped = rig.Now.Monotonic;
        rig.Scan();
        rig.Scan(new FloodNow("Ada", new RackId(0)));
        rig.LeapFor(Duration.FromMinutes(14));
        Assert.False(rig.IsOn("north/pump"));

        rig.LeapUntil(() => rig.IsOn("north/pump"));

        Assert.True(rig.Now.Monotonic - stopped >= Duration.FromMinutes(15));
    }

    [Fact]
    public void RestBeginsAgainAfterARestartHoweverLongThePowerWasAway()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromHours(1));
        rig.Restart(Duration.FromHours(2));
        var booted = rig.Now.Monotonic;
        rig.Scan(new FloodNow("Ada", new RackId(0)));

        rig.LeapUntil(() => rig.IsOn("north/pump"));

        Assert.True(rig.Now.Monotonic - booted >= Duration.FromMinutes(15));
    }

    [Fact]
    public void RestIsOrdinaryAndRaisesNoAlarm()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromSeconds(30));

        Assert.Contains("the pump rests until", rig.Why("north/pump").Interlocks[0]);

        // It is off because nobody wants it on.
        Assert.StartsWith("no flood is due until", rig.Why("north/pump").Summary, StringComparison.Ordinal);
        Assert.Empty(rig.Control.Alarms());
    }

    [Fact]
    public void RestBeginsOnceOutputsWorkAgainSinceNobodyKnowsWhenThePumpStopped()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromMinutes(1));
        rig.Conditions = ScanConditions.Good with { Io = new IoOutcome("chip relays is gone") };
        rig.ScanFor(Duration.FromMinutes(2));
        var works = rig.Now.Monotonic;
        rig.Conditions = ScanConditions.Good;

        rig.LeapUntil(() => rig.IsOn("north/pump"));

        Assert.Equal(Duration.FromMinutes(15), rig.Now.Monotonic - works);
    }
}
