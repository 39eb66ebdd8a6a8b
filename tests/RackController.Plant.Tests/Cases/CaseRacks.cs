using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

/// <summary>Racks with the geometry of a reference case.</summary>
internal static class CaseRacks
{
    private const double ReservoirDepthMm = 20_000;
    private const double ReservoirStartMm = 10_000;

    // A given inflow comes through throttles so tight, from a pump so strong, that no height of a rack matters to it.
    private const double InflowTeeHeadM = 1e4;
    private const double InflowShutOffHeadM = 1e6;
    private const double InflowBoreMm = 10;
    private const double OutletAboveFloorMm = 5_000;

    // In a tray without one, a standpipe that no water reaches.
    private static readonly TrayCase.StandpipeData none = new(0.02, 10, 0, 0);

    /// <summary>The rack of a case: the reservoir's surface starts at height 0, nothing grows.</summary>
    public static Rack Of(TrayCase tray)
    {
        var areaM2 = tray.Reservoir?.AreaM2 ?? 100;
        var template = Sites.OneRack(tray.Trays.Length).Racks[0];
        return template with
        {
            Reservoir = new Reservoir(
                areaM2 * ReservoirDepthMm, ReservoirDepthMm, -ReservoirStartMm, areaM2 * ReservoirStartMm, PumpIntakeMm: 10),
            Pump = template.Pump with { Curve = tray.Supply is { } known ? known.Pump.Curve : InflowCurve(tray) },
            Supply = tray.Supply is { } supply ? RiserOf(supply) : new SupplyRiser(1000, 1, 0, 0, HasCheckValve: true),
            Drain = new DrainStack(40, tray.DrainStackLpm ?? 1e6),
            Tiers = [.. template.Tiers.Select((tier, index) => tier with
            {
                TrayFloorHeightMm = tray.Trays[index].FloorM * 1000,
                Tray = TrayOf(tray.Trays[index]),
                Branch = tray.Supply is { } one ? BranchOf(one.Tiers[index], tray.Trays[index]) : InflowBranch(tray, index),
            })],
        };
    }

    private static FloodTray TrayOf(TrayCase.TrayData data)
    {
        var standpipe = data.Standpipe ?? none;
        return new FloodTray(
            data.LengthM * 1000, data.WidthM * 1000, data.EdgeM * 1000, standpipe.RimM * 1000, standpipe.DiameterM * 1000,
            (data.Weep?.DiameterM ?? 0) * 1000, new TrayContents(0, "none", data.Displaced, data.DisplacedToM * 1000));
    }

    // A rack has one bore and one loss for all its riser, and the riser's steps are those of its trays.
    private static SupplyRiser RiserOf(TrayCase.SupplyData supply)
    {
        Assert.Equal(Pipe.DrawnTubingRoughnessM, supply.RoughnessMm / 1000, 1e-12);
        Assert.All(supply.Segments, segment => Assert.Equal(supply.Segments[0].DiameterMm, segment.DiameterMm));
        Assert.All(supply.Segments.Skip(1), segment => Assert.Equal(supply.Segments[^1].MinorK, segment.MinorK));
        return new SupplyRiser(
            supply.Segments[0].DiameterMm, supply.Segments[0].LengthM * 1000, supply.Segments[0].MinorK,
            supply.Segments[^1].MinorK, supply.CheckValves ?? true);
    }

    private static SupplyBranch BranchOf(SupplyCase.TierData branch, TrayCase.TrayData tray) => new(
        branch.BranchDiameterMm, branch.BranchLengthM * 1000, branch.MinorK, (branch.OutletHeightM - tray.FloorM) * 1000);

    private static PumpCurve InflowCurve(TrayCase tray) => new(
        InflowShutOffHeadM, Math.Max(tray.InflowLpm!.Sum(), 1) / Math.Sqrt(1 - InflowTeeHeadM / InflowShutOffHeadM), 2);

    private static SupplyBranch InflowBranch(TrayCase tray, int index)
    {
        var areaM2 = Math.PI * Math.Pow(InflowBoreMm / 1000, 2) / 4;
        var speed = tray.InflowLpm![index] / Litres.PerMinutePerM3PerS / areaM2;
        var headM = InflowTeeHeadM - tray.Trays[index].FloorM - OutletAboveFloorMm / 1000;
        var minorLossK = speed > 0 ? headM * 2 * Physics.GravityMPerS2 / (speed * speed) : 0;
        return new SupplyBranch(InflowBoreMm, 0, minorLossK, OutletAboveFloorMm);
    }
}
