using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Rows service-hold and service-hold-ending.</summary>
public class ServiceHoldTests
{
    private static readonly RackId north = new(0);

    [Fact]
    public void HandsInTheRackStopPumpAndValvesAtOnce()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan(new HoldForService("Ada", north, Duration.FromMinutes(10)));

        Assert.False(rig.IsOn("north/pump"));
        Assert.False(rig.IsOn("north/tier 1 valve"));
        Assert.Contains("hands are in the rack until", rig.Why("north/pump").Summary);
    }

    [Fact]
    public void AHoldEndsByItselfWithAWarningFirst()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan(new HoldForService("Ada", north, Duration.FromMinutes(10)));
        var began = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Alarm("north/service-hold-ending") is not null);
        Assert.Equal(Duration.FromMinutes(8), rig.Now.Monotonic - began);
        rig.LeapUntil(() => !IsHeld(rig));

        Assert.Equal(Duration.FromMinutes(10), rig.Now.Monotonic - began);
    }

    [Fact]
    public void AHoldIsCutToTheLongestThatTheRackAllowsAndSaysSo()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan(new HoldForService("Ada", north, Duration.FromHours(9)));

        Assert.Equal(
            "service hold for 30 min, the longest that this rack allows",
            rig.Events.Single(e => e.Kind == EventKind.Request).What);
    }

    [Fact]
    public void AShorterHoldDoesNotShortenTheHoldOfSomebodyElse()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan(new HoldForService("Ada", north, Duration.FromMinutes(20)));
        rig.Scan(new HoldForService("Bo", north, Duration.FromMinutes(2)));
        rig.LeapFor(Duration.FromMinutes(19));

        Assert.True(IsHeld(rig));
    }

    [Fact]
    public void ARestartDoesNotShortenAHold()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan(new HoldForService("Ada", north, Duration.FromMinutes(30)));
        rig.LeapFor(Duration.FromMinutes(5));
        rig.Restart(Duration.FromHours(4));
        rig.LeapFor(Duration.FromMinutes(24));
        Assert.True(IsHeld(rig));

        rig.LeapFor(Duration.FromMinutes(2));
        Assert.False(IsHeld(rig));
    }

    [Fact]
    public void TakingTheHandsOutEndsIt()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan(new HoldForService("Ada", north, Duration.FromMinutes(30)));
        Assert.True(IsHeld(rig));
        rig.Scan(new EndServiceHold("Ada", north));
        Assert.Contains(rig.Events, e => e.What == "service hold ended; the pump may start in 30 s");

        rig.LeapFor(Duration.FromSeconds(29));
        Assert.True(IsHeld(rig));
        rig.LeapFor(Duration.FromSeconds(1));
        Assert.False(IsHeld(rig));
    }

    [Fact]
    public void APumpThatWaitsDoesNotStartInTheHandsOfWhoeverResumes()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan(new Stop("Ada", null));
        rig.LeapFor(Duration.FromHours(1));
        rig.Scan(new Resume("Ada", null));
        var resumed = rig.Now.Monotonic;
        Assert.Contains("hands may still be in the rack until", rig.Why("north/tier 1 valve").Summary, StringComparison.Ordinal);

        rig.LeapUntil(() => rig.IsOn("north/pump"));
        Assert.True(rig.Now.Monotonic - resumed >= Duration.FromSeconds(30));
    }

    [Fact]
    public void APumpThatWaitsDoesNotStartInTheHandsOfWhoeverResets()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Set("north/leak rope", 0);
        rig.LeapFor(Duration.FromHours(1));
        rig.Scan(new ResetLatch("Ada", "north/high-water"));
        rig.Scan(new ConfirmReset("Ada", "north/high-water"));
        var reset = rig.Now.Monotonic;

        rig.LeapUntil(() => rig.IsOn("north/pump"));
        Assert.InRange((rig.Now.Monotonic - reset).TotalSeconds, 30, 33);
    }

    private static bool IsHeld(Rig rig) =>
        rig.Why("north/pump").Interlocks.Any(words => words.StartsWith("service-hold:", StringComparison.Ordinal));
}
