using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

/// <summary>Racks with the geometry of a reference case.</summary>
internal static class Racks
{
    private const double ReservoirDepthMm = 1000;
    private const double ReservoirStartL = 300;

    /// <summary>The rack of a case: the reservoir's surface starts at height 0, nothing grows.</summary>
    public static Rack Of(TrayCase tray)
    {
        var areaM2 = tray.Reservoir?.AreaM2 ?? 0.35;
        var supply = tray.Supply;
        var template = Sites.OneRack(tray.Trays.Length).Racks[0];
        return template with
        {
            Reservoir = new Reservoir(areaM2 * ReservoirDepthMm, ReservoirDepthMm, -ReservoirStartL / areaM2, ReservoirStartL, 10),
            Pump = template.Pump with { Curve = CurveOf(tray) },
            Supply = supply is null ? template.Supply : new SupplyRiser(
                supply.Segments[0].DiameterMm, supply.Segments[0].LengthM * 1000, supply.Segments[0].MinorK,
                supply.Segments[^1].MinorK, HasCheckValve: true),
            Drain = new DrainStack(40, tray.DrainStackLpm ?? 1000),
            Tiers = [.. tray.Trays.Select((data, index) => TierOf(template.Tiers[index], data, supply?.Tiers[index]))],
        };
    }

    // A constant inflow is a pump that gives the same flow against any head.
    private static PumpCurve CurveOf(TrayCase tray) => tray.Supply is { Pump: var pump }
        ? new PumpCurve(pump.H0M, pump.QMaxLpm, pump.Exponent ?? 2)
        : new PumpCurve(1e6, Math.Max(tray.InflowLpm![0], 1), 2);

    private static Tier TierOf(Tier template, TrayCase.TrayData data, SupplyCase.TierData? branch) => template with
    {
        TrayFloorHeightMm = data.FloorM * 1000,
        Tray = new FloodTray(
            data.LengthM * 1000, data.WidthM * 1000, data.EdgeM * 1000, (data.Standpipe?.RimM ?? 0.08) * 1000,
            (data.Standpipe?.DiameterM ?? 0.02) * 1000, data.Weep.DiameterM * 1000, new TrayContents(0, "none", 0, 0)),
        Branch = branch is null ? template.Branch with { OutletAboveTrayFloorMm = 70 } : new SupplyBranch(
            branch.BranchDiameterMm, branch.BranchLengthM * 1000, branch.MinorK, (branch.OutletHeightM - data.FloorM) * 1000),
    };
}
