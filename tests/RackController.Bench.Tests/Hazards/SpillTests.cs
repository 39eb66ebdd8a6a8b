using RackController.Bench.Tests.Support;

namespace RackController.Bench.Tests.Hazards;

/// <summary>The usual spills on the demo rack, as the hardware notes list them: what ends in its drip tray of 60 L, and that nothing
/// of it reaches the floor.</summary>
public sealed class SpillTests
{
    private const string Morning = "start: 2026-03-02 06:30\nlength: 3 h\n";
    private const string Expect = "expect:\n  - that: the aerator runs\n    always: { load: north/aerator, is: on }\n    from: 1 min\n";

    /// <summary>At most what a tray holds 10 mm above its standpipe: 0.7168 m2 x (54.5 - 0.3 x 40) mm = 30.5 L (arithmetic).</summary>
    [Theory]
    [InlineData("fault: tray-leak\n    tier: north/tier 1\n    size: 0.2 L/min", "07:05", 0.02, 6)]
    [InlineData("fault: tray-leak\n    tier: north/tier 4\n    size: 60 L/min", "07:05", 5, 31)]
    [InlineData("fault: hose-loose\n    rack: north\n    size: 1", "07:02", 1, 4)]
    [InlineData("fault: hose-loose\n    rack: north\n    size: 0.05", "07:02", 0.5, 4)]
    [InlineData("fault: standpipe-blocked\n    tier: north/tier 2\n    size: 1", "06:40", 0, 0)]
    [InlineData("fault: drain-stack-blocked\n    rack: north\n    size: 1", "06:40", 0, 0)]
    [InlineData("fault: reservoir-refilled\n    rack: north\n    size: 75 L", "06:40", 54, 56)]
    public void NoneOfThemReachesTheFloor(string fault, string at, double leastL, double mostL)
    {
        var result = Scenes.Run($"{Morning}events:\n  - at: 2026-03-02 {at}\n    {fault}\n{Expect}");
        Assert.DoesNotContain(result.Hazards, hazard => hazard.Kind == HazardKind.WaterOnTheFloor);
        Assert.InRange(result.Racks.Single().DripTrayL, leastL, mostL);
    }

    /// <summary>A tray leaks under a pump whose relay has welded, without a contactor upstream: of all there is only the wired float
    /// stops that, and the run says so.</summary>
    [Fact]
    public void OnlyTheWiredFloatStopsAWeldedPumpThatSpills()
    {
        const string Faults = "events:\n  - at: 2026-03-02 07:03\n    fault: relay-welded\n    load: north/pump\n"
            + "  - at: 2026-03-02 07:05\n    fault: tray-leak\n    tier: north/tier 1\n    size: 8 L/min\n";
        var result = Scenes.RunWithoutContactor($"{Morning}{Faults}{Expect}");
        Assert.DoesNotContain(result.Hazards, hazard => hazard.Kind is HazardKind.WaterOnTheFloor or HazardKind.PumpPastItsMaximumRun);
        var rack = result.Racks.Single();
        Assert.InRange(rack.WiredFloatOpenedAfter!.Value.TotalMinutes, 35, 40);
        Assert.Contains("the wired float opened after 3", TotalsWords.Of(result, rack), StringComparison.Ordinal);

        var bare = Scenes.RunWithoutContactor(
            $"{Morning}{Faults}  - at: 2026-03-02 07:04\n    fault: float-cutout-stuck\n    rack: north\n{Expect}");
        Assert.Contains(bare.Hazards, hazard => hazard.Kind == HazardKind.WaterOnTheFloor);
        Assert.Null(bare.Racks.Single().WiredFloatOpenedAfter);
    }
}
