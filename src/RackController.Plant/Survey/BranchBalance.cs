using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Throttles the branches of a rack so that every tier that takes part gets its share, each a little more than the one above it:
/// that is how all fill and the bottom one first. The branch that needs the least throttling stays as open as it is.
/// </summary>
public static class BranchBalance
{
    // How much more each tray gets than the one above it: the same as the rack file's own throttling.
    private const double MorePerTier = 0.03;

    // Tee, elbows, open valve and exit; common practice, no source.
    private const double OpenBranchK = 14;

    /// <summary>The rack so throttled; null when the pump cannot lift water to every tier that takes part.</summary>
    /// <param name="rack">The rack.</param>
    public static Rack? Of(Rack rack)
    {
        ArgumentNullException.ThrowIfNull(rack);
        var taking = rack.Tiers.Where(FloodTrial.TakesPart).ToArray();
        var (low, high) = (0.0, rack.Pump.Curve.MaxFlowLpm);
        for (var step = 0; step < 50; step++)
        {
            var middle = (low + high) / 2;
            var isWithinReach = taking.Zip(LossesAt(rack, taking, middle)).All(pair => pair.Second >= Openest(pair.First));
            (low, high) = isWithinReach ? (middle, high) : (low, middle);
        }

        if (low <= 0)
        {
            return null;
        }

        var losses = LossesAt(rack, taking, low);
        return rack with
        {
            Tiers = [.. rack.Tiers.Select(tier => Array.IndexOf(taking, tier) is >= 0 and var index
                ? tier with { Branch = tier.Branch with { MinorLossK = Rounded(AsWritten(rack, tier, losses[index])) } }
                : tier)],
        };
    }

    // A branch that was found to be open by another share than written is set by that share.
    private static double AsWritten(Rack rack, Tier tier, double minorLossK) =>
        minorLossK * RackPipes.BranchShare(rack, tier) * RackPipes.BranchShare(rack, tier);

    private static double Openest(Tier tier) => Math.Min(tier.Branch.MinorLossK, OpenBranchK);

    // A valve is set by eye: half a unit is finer than anybody turns it.
    private static double Rounded(double minorLossK) => Math.Round(2 * minorLossK) / 2;

    // The coefficients at which the highest of the tiers gets this flow and each one below it a little more.
    private static ImmutableArray<double> LossesAt(Rack rack, Tier[] taking, double leastLpm)
    {
        var flows = taking
            .Select((_, index) => leastLpm * (1 + MorePerTier * (taking.Length - 1 - index)) / Litres.PerMinutePerM3PerS)
            .ToArray();
        var riser = flows.Sum();
        var surfaceM = (rack.Reservoir.FloorHeightMm + rack.Reservoir.NormalVolumeL / rack.Reservoir.AreaM2) / 1000;
        var lift = PumpLift.Running(rack.PumpCurveAsMeasured, speed: 1, rack.Supply.HasCheckValve);
        var headM = surfaceM + lift.Head(riser, FloodTrial.Viscosity, out _);
        var losses = ImmutableArray.CreateBuilder<double>(taking.Length);
        foreach (var (segment, tier) in RackPipes.SegmentsOf(rack).Zip(rack.Tiers))
        {
            headM -= segment.Loss(riser, FloodTrial.Viscosity, out _);
            if (Array.IndexOf(taking, tier) is >= 0 and var index)
            {
                losses.Add(MinorLoss(tier, flows[index], headM));
                riser -= flows[index];
            }
        }

        return losses.MoveToImmutable();
    }

    // What is left of the head at the tee after height and friction, as a coefficient.
    private static double MinorLoss(Tier tier, double flow, double headM)
    {
        var branch = tier.Branch;
        var boreM = branch.BoreMm / 1000;
        var friction = new Pipe(branch.LengthMm / 1000, boreM, 0, Pipe.DrawnTubingRoughnessM).Loss(flow, FloodTrial.Viscosity, out _);
        var speed = flow / (Math.PI * boreM * boreM / 4);
        var outletM = (tier.TrayFloorHeightMm + branch.OutletAboveTrayFloorMm) / 1000;
        return (headM - outletM - friction) * 2 * Physics.GravityMPerS2 / (speed * speed);
    }
}
