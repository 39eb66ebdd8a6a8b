using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Service.Tests;

/// <summary>Which tiers took no part in a flood, as the switchings of valves tell it.</summary>
public sealed class RestingTiersTests
{
    private static readonly Site site = RackFileReader.Read(ShippedFiles.PathTo("config/demo-three-racks.yaml")).Site!;
    private static readonly Rack rack = site.Racks.Single(each => each.Tiers.All(tier => tier.Valve is not null));

    [Fact]
    public void ATierWhoseValveStaysShutRests() => Assert.Equal<TierSet?>(
        [TierSet.Of([2, 4, 5])],
        Resting([.. Flood(0, 1, 3)]));

    [Fact]
    public void ValvesThatStayOpenFromFloodToFloodAreKnown()
    {
        ControlEvent[] second =
        [
            At(2000, FloodEvent.Due), At(2001, FloodEvent.Filling), At(2300, FloodEvent.Soaking), At(2600, FloodEvent.Draining),
        ];

        Assert.Equal<TierSet?>([TierSet.Of([3, 4, 5]), TierSet.Of([3, 4, 5])], Resting([.. Flood(0, 1, 2), .. second]));
    }

    [Fact]
    public void AValveThatIsSwitchedWhileThePumpRunsLeavesTheFloodUntold() => Assert.Equal<TierSet?>(
        [null],
        Resting([At(0, FloodEvent.Due), Valve(1, 1, "on"), At(10, FloodEvent.Filling), Valve(60, 2, "on"), At(300, FloodEvent.Soaking)]));

    [Fact]
    public void AFloodThatWasUnderWayAsTheRecordBeginsIsUntold() => Assert.Equal<TierSet?>(
        [null, TierSet.Of([1, 2, 3, 5])],
        Resting(
        [
            At(0, FloodEvent.Due), At(5, FloodEvent.Drained), At(10, FloodEvent.Filling), At(300, FloodEvent.Draining),
            Valve(301, 1, "off"), .. Flood(2000, 4),
        ]));

    [Fact]
    public void AStartOfTheControllerShutsAllValves() => Assert.Equal<TierSet?>(
        [TierSet.Of([2, 3, 4, 5])],
        Resting(
        [
            Valve(0, 2, "on"), MadeUpJournal.Event(Happenings.Noon, EventKind.Controller, site.Name, "started", "of a test"),
            .. Flood(10, 1),
        ]));

    [Fact]
    public void WithoutValvesNoTierRests()
    {
        var without = site.Racks.First(each => each.Tiers.All(tier => tier.Valve is null));

        Assert.Equal(TierSet.None, Assert.Single(new FloodLog(site, without).Of([At(0, FloodEvent.Filling)], [])).Resting);
    }

    private static IEnumerable<ControlEvent> Flood(int from, params int[] tiers) =>
    [
        At(from, FloodEvent.Due), .. tiers.Select(tier => Valve(from + 1, tier, "on")), At(from + 10, FloodEvent.Filling),
        At(from + 300, FloodEvent.Soaking), At(from + 600, FloodEvent.Draining),
    ];

    private static ImmutableArray<TierSet?> Resting(ControlEvent[] events) =>
        [.. new FloodLog(site, rack).Of(events, []).Select(flood => flood.Resting)];

    private static ControlEvent Valve(int second, int tier, string what) => MadeUpJournal.Event(
        Happenings.Noon + Duration.FromSeconds(second), EventKind.Load, site[rack.Tier(tier).Valve!.Value].Name, what, "of a test");

    private static ControlEvent At(int second, string what) =>
        MadeUpJournal.Event(Happenings.Noon + Duration.FromSeconds(second), EventKind.Flood, rack.Name, what, "of a test");
}
