namespace RackController.Plant;

/// <summary>
/// Solves a supply network from anywhere, by shooting on the head at the top tee. Going down from there, the head at every tee fixes
/// its branch's flow, the flows above add up in the segment below, and its loss gives the next head; at the pump, what the pump
/// would have to give is compared with what its curve gives. Every step of that sweep is monotone (branch flows rise with head, losses
/// rise with flow, pump head falls with flow), so the mismatch falls strictly with the head chosen and has exactly one root, which
/// lies between the lowest and the highest head at the network's ends. Newton's method finds it in two or three sweeps from the last
/// solution; bisection of that bracket takes over wherever Newton would leave it or does not halve the mismatch, so convergence is
/// certain for any order of heights, shut tiers, starved tiers and flow in either direction. It ends by the mismatch, never by the
/// size of a step: where the top branch is wide and the riser narrow, a step far from the root is minute.
/// </summary>
internal sealed class NetworkShooting(Pipe[] segments, Pipe[] branches)
{
    private const double PrecisionM = 1e-9;
    private const int MaximumRounds = 200;

    private double topHeadM;

    /// <summary>Finds all flows.</summary>
    /// <param name="supply">Pump, screen and water.</param>
    /// <param name="reservoirHeadM">Height of the reservoir's surface, m, on the same scale as the ends.</param>
    /// <param name="ends">What each branch meets.</param>
    /// <param name="flows">Where flows go, m3/s; those that are there are where the search begins.</param>
    /// <param name="teeHeads">Where heads at the tees go, m.</param>
    public void Solve(
        in SupplyConditions supply, double reservoirHeadM, ReadOnlySpan<BranchEnd> ends, Span<double> flows, Span<double> teeHeads)
    {
        var run = segments[0].WithAdded(supply.ScreenLossK);
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

        var head = topHeadM > low && topHeadM < high ? topHeadM : (low + high) / 2;
        var missingBefore = double.PositiveInfinity;
        for (var round = 0; round < MaximumRounds; round++)
        {
            topHeadM = head;
            var missing = Sweep(head, supply, run, reservoirHeadM, ends, flows, teeHeads, out var slope);
            if (Math.Abs(missing) <= PrecisionM)
            {
                break;
            }

            if (missing > 0)
            {
                low = head;
            }
            else
            {
                high = head;
            }

            var next = head - missing / slope;
            var isFast = Math.Abs(missing) <= missingBefore / 2;
            head = isFast && next > low && next < high ? next : (low + high) / 2;
            missingBefore = Math.Abs(missing);
            if (head <= low || head >= high)
            {
                break;
            }
        }
    }

    // How much more head the pump gives than the flows at this top head need, m, and its derivative.
    private double Sweep(
        double topHead, in SupplyConditions supply, in Pipe run, double reservoirHeadM, ReadOnlySpan<BranchEnd> ends,
        Span<double> flows, Span<double> teeHeads, out double slope)
    {
        var head = topHead;
        var headSlope = 1.0;
        var flow = 0.0;
        var flowSlope = 0.0;
        for (var tier = branches.Length - 1; tier >= 0; tier--)
        {
            teeHeads[tier] = head;
            flows[tier] = BranchFlow(branches[tier], ends[tier], head, supply.Viscosity, flows[tier], out var branchSlope);
            flow += flows[tier];
            flowSlope += branchSlope * headSlope;
            var loss = tier == 0
                ? run.Loss(flow, supply.Viscosity, out var lossSlope)
                : segments[tier].Loss(flow, supply.Viscosity, out lossSlope);
            head += loss;
            headSlope += lossSlope * flowSlope;
        }

        var given = reservoirHeadM + supply.Pump.Head(flow, supply.Viscosity, out var pumpSlope);
        slope = pumpSlope * flowSlope - headSlope;
        return given - head;
    }

    private static double BranchFlow(
        in Pipe branch, in BranchEnd end, double head, double viscosity, double guess, out double slope)
    {
        var drive = head - end.HeadM;
        slope = 0;
        if (!end.Open || drive == 0 || (drive < 0 && end.BackShare <= 0))
        {
            return 0;
        }

        var share = drive > 0 ? 1 : -end.BackShare;
        var flow = branch.Flow(Math.Abs(drive), viscosity, guess / share, out var lossSlope);
        slope = Math.Abs(share) / lossSlope;
        return share * flow;
    }
}
