using NodaTime;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How pipes, trays, drains and the reservoir fail.</summary>
internal static class WaterwayModes
{
    private static readonly (Duration, Duration) untilRepaired = (Duration.FromMinutes(5), Duration.FromHours(8));
    private static readonly (Duration, Duration) atOnce = (Duration.Zero, Duration.Zero);

    /// <summary>The modes.</summary>
    public static IEnumerable<FaultMode> All =>
    [
        FaultMode.Of(
            FaultKind.ScreenClogged, "pump screen clogged", FaultFamily.Waterways, FaultTarget.OfRacks, untilRepaired,
            ModeSources.Clogs) with
        {
            Sizes = new FaultSizes(0.3, 1, 0.9, "of the screen"),
        },
        FaultMode.Of(
            FaultKind.WeepBlocked, "weep blocked", FaultFamily.Waterways, FaultTarget.OfTiers, untilRepaired, ModeSources.Clogs),
        FaultMode.Of(
            FaultKind.StandpipeBlocked, "standpipe blocked", FaultFamily.Waterways, FaultTarget.OfTiers, untilRepaired,
            ModeSources.Clogs) with
        {
            Sizes = new FaultSizes(0.2, 1, 0.9, "of the pipe"),
        },
        FaultMode.Of(
            FaultKind.DrainStackBlocked, "drain stack blocked", FaultFamily.Waterways, FaultTarget.OfRacks, untilRepaired,
            ModeSources.Clogs) with
        {
            Sizes = new FaultSizes(0.2, 1, 0.9, "of the stack"),
        },
        FaultMode.Of(
            FaultKind.TrayLeak, "tray leaks", FaultFamily.Waterways, FaultTarget.OfTiers, untilRepaired, ModeSources.Leaks) with
        {
            Sizes = new FaultSizes(0.05, 10, 1, "L/min"),
        },
        FaultMode.Of(
            FaultKind.HoseLoose, "hose loose", FaultFamily.Waterways, FaultTarget.OfRacks, untilRepaired, ModeSources.Leaks) with
        {
            Sizes = new FaultSizes(0.02, 1, 0.5, "of the pump's flow"),
        },
        FaultMode.Of(
            FaultKind.FloatCutoutStuck, "wired float stuck", FaultFamily.Waterways, FaultTarget.OfWiredFloats, untilRepaired,
            ModeSources.Jammed),
        FaultMode.Of(
            FaultKind.FloatCutoutUnlatched, "wired float does not latch", FaultFamily.Waterways, FaultTarget.OfWiredFloats, untilRepaired,
            ModeSources.LatchLost),
        FaultMode.Of(
            FaultKind.ReservoirEmptied, "reservoir drained by hand", FaultFamily.Waterways, FaultTarget.OfRacks, atOnce,
            ModeSources.ByHand) with
        {
            Sizes = new FaultSizes(5, 500, 100, "L"),
        },
    ];
}
