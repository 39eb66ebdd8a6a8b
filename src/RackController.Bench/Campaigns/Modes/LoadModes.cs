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
        .. new[] { (LoadKind.Pump, "pump"), (LoadKind.Light, "light"), (LoadKind.Fan, "fan") }.Select(one => FaultMode.Of(
            FaultKind.EarthLeakage, $"{one.Item2} leaks current to earth", FaultFamily.Loads, FaultTarget.OfLoads(one.Item1),
            untilRepaired, ModeSources.WaterGetsIn) with
        {
            Sizes = leakage,
        }),
    ];
}
