using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How pumps, lights, fans, aerators and valves themselves fail.</summary>
internal static class LoadModes
{
    private static readonly (Duration, Duration) untilRepaired = (Duration.FromMinutes(5), Duration.FromHours(8));
    private static readonly FaultSizes leakage = new(2, 60, 10, "mA");

    /// <summary>The modes.</summary>
    public static IEnumerable<FaultMode> All =>
    [
        FaultMode.Of(FaultKind.PumpWorn, "pump worn", FaultFamily.Loads, FaultTarget.OfRacks, untilRepaired, ModeSources.Wears) with
        {
            Sizes = new FaultSizes(0.05, 0.9, 0.5, "of its speed"),
        },
        FaultMode.Of(FaultKind.PumpSeized, "pump seized", FaultFamily.Loads, FaultTarget.OfRacks, untilRepaired, ModeSources.Seizes),
        Dead(LoadKind.Pump, "pump"),
        Dead(LoadKind.Light, "light"),
        Dead(LoadKind.Fan, "fan"),
        Dead(LoadKind.Aerator, "aerator"),
        Dead(LoadKind.Valve, "valve coil"),
        Seized(LoadKind.Fan, "fan"),
        Seized(LoadKind.Aerator, "aerator"),
        Of(FaultKind.ValveStuckOpen, "valve stuck open", FaultTarget.OfLoads(LoadKind.Valve), ModeSources.ValveSticks),
        Of(FaultKind.ValveStuckShut, "valve stuck shut", FaultTarget.OfLoads(LoadKind.Valve), ModeSources.ValveSticks),
        Of(FaultKind.AirStoneBlocked, "air stone blocked", FaultTarget.OfRacks, ModeSources.StoneClogs),
        FaultMode.Of(
            FaultKind.TimeCutoutStuck, "wired time relay hangs", FaultFamily.Loads, FaultTarget.OfTimeRelays, untilRepaired,
            ModeSources.Sluggish),
        FaultMode.Of(
            FaultKind.TimeCutoutTurned, "wired time relay turned down", FaultFamily.Loads, FaultTarget.OfTimeRelays, untilRepaired,
            ModeSources.Turned) with
        {
            Sizes = new FaultSizes(5, 300, 60, "s"),
        },
        .. new[] { (LoadKind.Pump, "pump"), (LoadKind.Light, "light"), (LoadKind.Fan, "fan") }.Select(one => FaultMode.Of(
            FaultKind.EarthLeakage, $"{one.Item2} leaks current to earth", FaultFamily.Loads, FaultTarget.OfLoads(one.Item1),
            untilRepaired, ModeSources.WaterGetsIn) with
        {
            Sizes = leakage,
        }),
    ];

    private static FaultMode Dead(LoadKind kind, string words) =>
        Of(FaultKind.LoadDead, $"{words} dead", FaultTarget.OfLoads(kind), ModeSources.Dies);

    private static FaultMode Seized(LoadKind kind, string words) =>
        Of(FaultKind.MotorSeized, $"{words} seized", FaultTarget.OfLoads(kind), ModeSources.Seizes);

    private static FaultMode Of(FaultKind fault, string words, Func<Site, IEnumerable<FaultTarget>> targets, string source) =>
        FaultMode.Of(fault, words, FaultFamily.Loads, targets, untilRepaired, source);
}
