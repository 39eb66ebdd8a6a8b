using NodaTime;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How the supply of a circuit fails.</summary>
internal static class SupplyModes
{
    private static readonly (Duration, Duration) outage = (Duration.FromSeconds(10), Duration.FromHours(6));

    /// <summary>The modes.</summary>
    public static IEnumerable<FaultMode> All =>
    [
        Of(FaultKind.SupplyOutage, "supply dips", (Duration.FromMilliseconds(50), Duration.FromSeconds(5)), ModeSources.Grid),
        Of(FaultKind.SupplyOutage, "supply lost", outage, ModeSources.Grid),
        Of(FaultKind.BrownOut, "supply browns out", (Duration.FromSeconds(1), Duration.FromHours(1)), ModeSources.Grid) with
        {
            Sizes = new FaultSizes(0.2, 0.95, 0.6, "of the voltage"),
        },
        Of(FaultKind.BreakerTrip, "breaker opens", outage, ModeSources.BreakerOpens),
        Of(FaultKind.GroundFaultTrip, "ground-fault protection opens", outage, ModeSources.Nuisance),
    ];

    private static FaultMode Of(FaultKind kind, string words, (Duration, Duration) lasts, string source) =>
        FaultMode.Of(kind, words, FaultFamily.Supply, FaultTarget.OfCircuits, lasts, source);
}
