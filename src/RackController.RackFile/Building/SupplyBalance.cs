using System.Collections.Immutable;
using RackController.Model;

namespace RackController.RackFile.Building;

/// <summary>
/// Throttles the branches of a rack as a grower does with hand valves: the top branch stays open, and each one below is
/// closed until its tray gets a little more than the one above, so that the bottom tray fills first and none starves.
/// Only a starting point for files that give no minor losses; the simulated rack solves the network itself.
/// </summary>
internal static class SupplyBalance
{
    /// <summary>Minor loss of an open branch: tee, elbows, open valve and exit.</summary>
    public const double OpenBranchK = 14;

    /// <summary>How much more each tray gets than the one above it.</summary>
    private const double MorePerTier = 0.03;

    private const double GravityMPerS2 = 9.80665;
    private const double ViscosityM2PerS = 1.0034e-6;

    /// <summary>Minor loss coefficients of the branches, bottom first.</summary>
    /// <param name="reservoir">The tank, full to its normal volume.</param>
    /// <param name="pump">What the pump can lift.</param>
    /// <param name="supply">The riser.</param>
    /// <param name="tiers">Tray heights, bottom first, with the branch of each; their minor losses are not read.</param>
    /// <returns>The coefficients; null when the pump cannot lift water to the top tray.</returns>
    public static ImmutableArray<double>? Solve(
        Reservoir reservoir, PumpCurve pump, SupplyRiser supply,
        ImmutableArray<(double TrayFloorHeightMm, SupplyBranch Branch)> tiers)
    {
        var (low, high) = (0.0, pump.MaxFlowLpm);
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            var isEnough = MinorLosses(middle, reservoir, pump, supply, tiers)[^1] > OpenBranchK;
            (low, high) = isEnough ? (middle, high) : (low, middle);
        }

        return low > 0 ? MinorLosses(low, reservoir, pump, supply, tiers) : null;
    }

    /// <summary>The coefficients at which the top branch carries this flow and each one below a little more.</summary>
    private static ImmutableArray<double> MinorLosses(
        double topFlowLpm, Reservoir reservoir, PumpCurve pump, SupplyRiser supply,
        ImmutableArray<(double TrayFloorHeightMm, SupplyBranch Branch)> tiers)
    {
        var flowsLpm = Enumerable.Range(0, tiers.Length)
            .Select(index => topFlowLpm * (1 + MorePerTier * (tiers.Length - 1 - index)))
            .ToArray();
        var riserLpm = flowsLpm.Sum();
        var surfaceM = (reservoir.FloorHeightMm + reservoir.NormalVolumeL / reservoir.AreaM2) / 1000;
        var headM = surfaceM
            + pump.ShutOffHeadM * (1 - Math.Pow(riserLpm / pump.MaxFlowLpm, pump.Exponent))
            - PipeLossM(riserLpm, supply.BoreMm, supply.RunLengthMm, supply.RunMinorLossK);
        var losses = ImmutableArray.CreateBuilder<double>(tiers.Length);
        for (var index = 0; index < tiers.Length; index++)
        {
            var (floorMm, branch) = tiers[index];
            var spareM = headM - (floorMm + branch.OutletAboveTrayFloorMm) / 1000
                - PipeLossM(flowsLpm[index], branch.BoreMm, branch.LengthMm, 0);
            losses.Add(spareM / VelocityHeadM(flowsLpm[index], branch.BoreMm));
            riserLpm -= flowsLpm[index];
            if (index + 1 < tiers.Length)
            {
                headM -= PipeLossM(
                    riserLpm, supply.BoreMm, tiers[index + 1].TrayFloorHeightMm - floorMm, supply.TeeMinorLossK);
            }
        }

        return losses.MoveToImmutable();
    }

    /// <summary>Darcy-Weisbach in a smooth pipe, 64/Re below Re 2000 and Swamee-Jain above.</summary>
    private static double PipeLossM(double flowLpm, double boreMm, double lengthMm, double minorLossK)
    {
        var reynolds = VelocityMPerS(flowLpm, boreMm) * boreMm / 1000 / ViscosityM2PerS;
        if (reynolds <= 0)
        {
            return 0;
        }

        var friction = reynolds < 2000 ? 64 / reynolds : 0.25 / Math.Pow(Math.Log10(5.74 / Math.Pow(reynolds, 0.9)), 2);
        return (friction * lengthMm / boreMm + minorLossK) * VelocityHeadM(flowLpm, boreMm);
    }

    private static double VelocityHeadM(double flowLpm, double boreMm) =>
        Math.Pow(VelocityMPerS(flowLpm, boreMm), 2) / (2 * GravityMPerS2);

    private static double VelocityMPerS(double flowLpm, double boreMm) =>
        flowLpm / 60_000 / (Math.PI / 4 * Math.Pow(boreMm / 1000, 2));
}
