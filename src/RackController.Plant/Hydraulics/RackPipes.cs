using RackController.Model;

namespace RackController.Plant;

/// <summary>Reads the pipes of a rack from its description.</summary>
internal static class RackPipes
{
    private const double SmallestFreeShare = 1e-6;

    /// <summary>The supply network: the run from the pump to the lowest tee, one riser segment as long as each step from tier
    /// to tier, and a branch per tier.</summary>
    /// <param name="rack">The rack.</param>
    public static SupplyNetwork NetworkOf(Rack rack)
    {
        var segments = new Pipe[rack.Tiers.Length];
        var branches = new Pipe[rack.Tiers.Length];
        var supply = rack.Supply;
        for (var index = 0; index < segments.Length; index++)
        {
            var step = index == 0 ? 0 : rack.Tiers[index].TrayFloorHeightMm - rack.Tiers[index - 1].TrayFloorHeightMm;
            segments[index] = index == 0
                ? Of(supply.RunLengthMm, supply.BoreMm, supply.RunMinorLossK)
                : Of(Math.Abs(step), supply.BoreMm, supply.TeeMinorLossK);
            var branch = rack.Tiers[index].Branch;
            branches[index] = Of(branch.LengthMm, branch.BoreMm, branch.MinorLossK);
        }

        return new SupplyNetwork(segments, branches);
    }

    /// <summary>Loss coefficient that a screen adds when a share of it is clogged: K = 1.3 s + (1 / (1 - s) - 1)^2 for a wire
    /// screen with the share s covered (Idelchik, Handbook of Hydraulic Resistance, from memory).</summary>
    /// <param name="cloggedShare">0 clean, 1 shut.</param>
    public static double ScreenLossK(double cloggedShare)
    {
        var free = Math.Max(1 - cloggedShare, SmallestFreeShare);
        return 1.3 * (1 - free) + (1 / free - 1) * (1 / free - 1);
    }

    private static Pipe Of(double lengthMm, double boreMm, double minorLossK) =>
        new(lengthMm / 1000, boreMm / 1000, minorLossK, Pipe.DrawnTubingRoughnessM);
}
