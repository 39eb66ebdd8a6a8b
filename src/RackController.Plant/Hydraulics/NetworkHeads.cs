using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Solves a supply network from anywhere, for the heads at all tees at once. Every flow grows with the head that drives it, so what a
/// tee gets beyond what it gives is the downhill slope of a strictly convex function of the heads, the network's content (Cherry 1951,
/// from memory), and its derivative is a symmetric tridiagonal matrix that elimination solves without loss of figures. Newton's method
/// goes downhill there. A step stands if the content still does not rise at its end, so that it fell all along the step, or if it
/// halves the least imbalance so far, which can happen only so often; any other is shortened. In exact arithmetic that ends at the one
/// solution for any bores, order of heights, shut and starved tiers and flow in either direction. In rounded numbers the head lost in a
/// wide pipe may vanish beside the heights, so the last step is taken in the flows too (Todini and Pilati 1988, from memory), and the
/// answer is what balances by the pipes' own losses.
/// </summary>
internal sealed class NetworkHeads(Pipe[] segments, Pipe[] branches)
{
    private const double PrecisionM = 1e-9;

    // A nanolitre in a quarter of an hour: a shut check valve turns what rounding leaves of a sum of flows into heads.
    private const double PrecisionM3PerS = 1e-15;

    // Five to eight rounds are usual; the most that 200,000 random ladders took, of bores from 2 to 200 mm, was 98.
    private const int MaximumRounds = 500;
    private const int MaximumShortenings = 40;

    private readonly PumpRun pumpRun = new(segments[0]);
    private readonly PipeTangent[] risers = new PipeTangent[branches.Length];
    private readonly BranchPoint[] points = new BranchPoint[branches.Length];
    private readonly double[] heads = new double[branches.Length];
    private readonly double[] imbalances = new double[branches.Length];
    private readonly double[] steps = new double[branches.Length];
    private readonly double[] conductances = new double[branches.Length];

    /// <summary>Finds all flows.</summary>
    /// <param name="supply">Pump, screen and water.</param>
    /// <param name="reservoirHeadM">Height of the reservoir's surface, m, on the same scale as the ends.</param>
    /// <param name="ends">What each branch meets.</param>
    /// <param name="flows">Where flows go, m3/s.</param>
    /// <param name="teeHeads">Where heads at the tees go, m; those that are there are where the search begins.</param>
    public void Solve(
        in SupplyConditions supply, double reservoirHeadM, ReadOnlySpan<BranchEnd> ends, Span<double> flows, Span<double> teeHeads)
    {
        Start(supply, reservoirHeadM, ends, teeHeads);
        var least = FindFlows(supply, reservoirHeadM, ends);
        FindSteps();
        for (var round = 0; !Balances(supply, reservoirHeadM, ends, flows, teeHeads); round++)
        {
            Invariant.Holds(round < MaximumRounds, "a supply network balances");
            heads.CopyTo(teeHeads);
            least = Descend(supply, reservoirHeadM, ends, teeHeads, least);
            FindSteps();
        }
    }

    private void Start(in SupplyConditions supply, double reservoirHeadM, ReadOnlySpan<BranchEnd> ends, ReadOnlySpan<double> teeHeads)
    {
        var low = reservoirHeadM;
        var high = reservoirHeadM + supply.Pump.ShutOffHeadM;
        foreach (var end in ends)
        {
            if (end.Open)
            {
                low = Math.Min(low, end.HeadM);
                high = Math.Max(high, end.HeadM);
            }
        }

        for (var tier = 0; tier < heads.Length; tier++)
        {
            var last = teeHeads[tier];
            heads[tier] = last > low && last < high ? last : (low + high) / 2;
        }
    }

    // All flows at the heads, and how much of them is out of balance, m3/s.
    private double FindFlows(in SupplyConditions supply, double reservoirHeadM, ReadOnlySpan<BranchEnd> ends)
    {
        risers[0] = pumpRun.At(supply, reservoirHeadM - heads[0], risers[0]);
        for (var tier = 1; tier < heads.Length; tier++)
        {
            risers[tier] = RiserAt(segments[tier], heads[tier - 1] - heads[tier], supply.Viscosity, risers[tier]);
        }

        var sum = 0.0;
        for (var tier = 0; tier < heads.Length; tier++)
        {
            points[tier] = BranchPoint.At(branches[tier], ends[tier], heads[tier], supply.Viscosity, points[tier]);
            var above = tier + 1 < heads.Length ? risers[tier + 1].FlowM3PerS : 0;
            imbalances[tier] = risers[tier].FlowM3PerS - above - points[tier].FlowM3PerS;
            sum += Math.Abs(imbalances[tier]);
        }

        return sum;
    }

    private static PipeTangent RiserAt(in Pipe pipe, double drive, double viscosity, in PipeTangent last)
    {
        var guess = last.Slope > 0 ? Math.Abs(last.FlowAt(drive)) : 0;
        var flow = pipe.Flow(Math.Abs(drive), viscosity, guess, out var slope);
        return new PipeTangent(Math.CopySign(flow, drive), drive, slope);
    }

    // Newton's step, by elimination from the top tee down: all that is above a tee acts as one more branch there. Conductances are only
    // ever added, so nothing is lost by rounding where a wide pipe meets a narrow one.
    private void FindSteps()
    {
        var (conductanceAbove, imbalanceAbove) = (0.0, 0.0);
        for (var tier = heads.Length - 1; tier >= 0; tier--)
        {
            conductances[tier] = points[tier].FlowPerHead + conductanceAbove;
            steps[tier] = imbalances[tier] + imbalanceAbove;
            var passedOn = 1 / (1 + risers[tier].Slope * conductances[tier]);
            conductanceAbove = conductances[tier] * passedOn;
            imbalanceAbove = steps[tier] * passedOn;
        }

        var below = 0.0;
        for (var tier = 0; tier < heads.Length; tier++)
        {
            var slope = risers[tier].Slope;
            below = (below + slope * steps[tier]) / (1 + slope * conductances[tier]);
            steps[tier] = below;
        }
    }

    // Whether heads and flows one step further balance by the pipes' own losses.
    private bool Balances(
        in SupplyConditions supply, double reservoirHeadM, ReadOnlySpan<BranchEnd> ends, Span<double> flows, Span<double> teeHeads)
    {
        for (var tier = 0; tier < heads.Length; tier++)
        {
            teeHeads[tier] = heads[tier] + steps[tier];
            flows[tier] = points[tier].FlowM3PerS + points[tier].FlowPerHead * steps[tier];
        }

        var sum = 0.0;
        for (var tier = heads.Length - 1; tier >= 0; tier--)
        {
            sum += flows[tier];
            var excess = tier == 0
                ? pumpRun.Excess(supply, reservoirHeadM - teeHeads[0], sum, out var slope)
                : segments[tier].Loss(sum, supply.Viscosity, out slope) - (teeHeads[tier - 1] - teeHeads[tier]);
            if (!(Math.Abs(excess) <= PrecisionM + slope * PrecisionM3PerS)
                || !BranchPoint.Balances(branches[tier], ends[tier], teeHeads[tier], supply.Viscosity, flows[tier], PrecisionM))
            {
                return false;
            }
        }

        return true;
    }

    // Goes as much of the step as goes downhill, and says the least imbalance so far, m3/s.
    private double Descend(
        in SupplyConditions supply, double reservoirHeadM, ReadOnlySpan<BranchEnd> ends, ReadOnlySpan<double> from, double least)
    {
        var fall = Fall();
        var share = 1.0;
        for (var round = 0; ; round++)
        {
            for (var tier = 0; tier < heads.Length; tier++)
            {
                heads[tier] = from[tier] + share * steps[tier];
            }

            var imbalance = FindFlows(supply, reservoirHeadM, ends);
            var rise = -Fall();
            if (imbalance <= least / 2 || rise <= 0 || round == MaximumShortenings)
            {
                return Math.Min(least, imbalance);
            }

            share *= Math.Clamp(fall / (fall + rise), 0.1, 0.7);
        }
    }

    // How fast the content falls along the step.
    private double Fall()
    {
        var sum = 0.0;
        for (var tier = 0; tier < heads.Length; tier++)
        {
            sum += imbalances[tier] * steps[tier];
        }

        return sum;
    }
}
