using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>What a circuit goes by: of the limits of all racks that draw from it, the most careful one each.</summary>
internal sealed record CircuitLimits(
    Duration SupplyQuietPeriod, Duration RestartSpacing, Duration SwitchingStagger, int SupplyTripsToLatch, Duration OverLimitAfter,
    Duration OverLimitReturn, int OverLimitsToLatch, Duration LoadCheckEvery, Duration RelayRest)
{
    public static CircuitLimits Of(Site site, CircuitId circuit)
    {
        var racks = site.Loads.Where(load => load.Circuit == circuit).Select(load => site[load.Rack].Limits)
            .DefaultIfEmpty(InterlockLimits.Default).ToList();
        return new CircuitLimits(
            racks.Max(limits => limits.SupplyQuietPeriod),
            racks.Max(limits => limits.RestartSpacing),
            racks.Max(limits => limits.SwitchingStagger),
            racks.Min(limits => limits.SupplyTripsToLatch),
            racks.Min(limits => limits.CircuitOverLimitAfter),
            racks.Max(limits => limits.CircuitOverLimitReturn),
            racks.Min(limits => limits.CircuitOverLimitsToLatch),
            racks.Min(limits => limits.LoadCheckEvery),
            racks.Max(limits => limits.RelayRest));
    }
}
