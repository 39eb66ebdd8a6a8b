using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Building;

/// <summary>Where the pipes and trays of a rack are: what was written, and what its shape suggests for the rest.</summary>
/// <param name="TrayHeightsMm">Heights of the trays' floors, bottom first.</param>
/// <param name="Trays">The trays.</param>
/// <param name="Supply">The riser.</param>
/// <param name="Branches">The branches.</param>
/// <param name="PumpReachesTop">Whether the pump lifts water to the top tray at all.</param>
internal sealed record RackShape(
    ImmutableArray<double> TrayHeightsMm, ImmutableArray<FloodTray> Trays, SupplyRiser Supply,
    ImmutableArray<SupplyBranch> Branches, bool PumpReachesTop)
{
    /// <summary>The shape of a rack of which every part that matters here is sound.</summary>
    /// <param name="rack">The rack as written.</param>
    public static RackShape Of(RackPart rack)
    {
        var heights = rack.Tiers
            .Select((tier, index) => tier.HeightMm ?? RackGeometry.TrayHeightMm(index + 1, rack.Tiers.Length))
            .ToImmutableArray();
        var supply = new SupplyRiser(
            rack.Supply!.BoreMm, rack.Supply.RunLengthMm ?? RackGeometry.RunLengthMm(heights[0]), rack.Supply.RunMinorLossK,
            rack.Supply.TeeMinorLossK, rack.Supply.HasCheckValve);
        var written = rack.Tiers.Select(tier => tier.Branch?.Over(rack.Branch!) ?? rack.Branch!).ToImmutableArray();
        var open = written
            .Select(branch => new SupplyBranch(
                branch.BoreMm!.Value, branch.LengthMm!.Value, SupplyBalance.OpenBranchK, branch.OutletMm!.Value))
            .ToImmutableArray();
        var balanced = SupplyBalance.Solve(rack.Reservoir!.Tank, rack.Pump!.Curve, supply, [.. heights.Zip(open)]);
        return new RackShape(
            heights,
            [.. rack.Tiers.Select(tier => tier.TrayOver(rack.Tray!).ToTray())],
            supply,
            [.. open.Select((branch, index) => branch with
            {
                MinorLossK = written[index].MinorLossK ?? balanced?[index] ?? SupplyBalance.OpenBranchK,
            })],
            balanced is not null);
    }
}
