using RackController.Model;

namespace RackController.Plant;

/// <summary>Reads the pipes of a rack from its description.</summary>
internal static class RackPipes
{
    private const double SmallestFreeShare = 1e-6;
    private const double CubicMillimetresPerM3 = 1e9;

    /// <summary>The supply network: the riser with a branch per tier.</summary>
    /// <param name="rack">The rack.</param>
    public static SupplyNetwork NetworkOf(Rack rack) => new(
        SegmentsOf(rack), [.. rack.Tiers.Select(tier => BranchOf(tier.Branch, BranchShare(rack, tier)))]);

    /// <summary>How far a branch was found to be open, as a share of what its minor loss says; 1 where nobody measured.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="tier">The tier.</param>
    public static double BranchShare(Rack rack, Tier tier) => rack.Measured?.Tier(tier.Number)?.Branch?.Value ?? 1;

    /// <summary>The riser: the run from the pump to the lowest tee, then one segment as long as each step from tier to tier.</summary>
    /// <param name="rack">The rack.</param>
    public static Pipe[] SegmentsOf(Rack rack)
    {
        var supply = rack.Supply;
        return
        [
            Of(supply.RunLengthMm, supply.BoreMm, supply.RunMinorLossK + (rack.Measured?.ScreenLossK?.Value ?? 0)),
            .. StepsMm(rack).Select(stepMm => Of(stepMm, supply.BoreMm, supply.TeeMinorLossK)),
        ];
    }

    /// <summary>Water that fills all of them, m3.</summary>
    /// <param name="rack">The rack.</param>
    public static double ContentM3(Rack rack) =>
        (Section(rack.Supply.BoreMm) * (rack.Supply.RunLengthMm + StepsMm(rack).Sum())
            + rack.Tiers.Sum(tier => Section(tier.Branch.BoreMm) * tier.Branch.LengthMm)) / CubicMillimetresPerM3;

    // At the same head a flow is as one over the root of the loss coefficient.
    private static Pipe BranchOf(SupplyBranch branch, double openShare) =>
        Of(branch.LengthMm, branch.BoreMm, branch.MinorLossK / (openShare * openShare));

    /// <summary>Loss coefficient that a screen adds when a share of it is clogged: K = 1.3 s + (1 / (1 - s) - 1)^2 for a wire
    /// screen with the share s covered (Idelchik, Handbook of Hydraulic Resistance, from memory).</summary>
    /// <param name="cloggedShare">0 clean, 1 shut.</param>
    public static double ScreenLossK(double cloggedShare)
    {
        var free = Math.Max(1 - cloggedShare, SmallestFreeShare);
        return 1.3 * (1 - free) + (1 / free - 1) * (1 / free - 1);
    }

    private static IEnumerable<double> StepsMm(Rack rack) =>
        rack.Tiers.Zip(rack.Tiers.Skip(1), (lower, upper) => Math.Abs(upper.TrayFloorHeightMm - lower.TrayFloorHeightMm));

    private static double Section(double boreMm) => Math.PI * boreMm * boreMm / 4;

    private static Pipe Of(double lengthMm, double boreMm, double minorLossK) =>
        new(lengthMm / 1000, boreMm / 1000, minorLossK, Pipe.DrawnTubingRoughnessM);
}
