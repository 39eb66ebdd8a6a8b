namespace RackController.Plant;

/// <summary>
/// Pump, riser and branches of one rack, solved as one network: a ladder of riser segments with a branch at every tee.
/// <para>
/// Method: shooting on the head at the top tee. Going down from there, the head at every tee fixes its branch's flow, the
/// flows above add up in the segment below, and its loss gives the next head; at the pump, what the pump would have to give is
/// compared with what its curve gives. Every step of that sweep is monotone (branch flows rise with head, losses rise with
/// flow, pump head falls with flow), so the mismatch falls strictly with the head chosen and has exactly one root, which lies
/// between the lowest and the highest head at the network's ends. Newton's method finds it in two or three sweeps from the
/// last solution; bisection of that bracket takes over wherever Newton would leave it, so convergence is certain for any
/// order of heights, shut tiers, starved tiers and flow in either direction.
/// </para>
/// </summary>
internal sealed class SupplyNetwork
{
    private const double PrecisionM = 1e-9;
    private const int MaximumRounds = 200;

    private readonly Pipe[] segments;
    private readonly Pipe[] branches;
    private double topHeadM;

    /// <summary>Lays the pipes.</summary>
    /// <param name="segments">Riser segments, from the pump upwards; segment k ends at tee k.</param>
    /// <param name="branches">Branches in riser order.</param>
    public SupplyNetwork(Pipe[] segments, Pipe[] branches)
    {
        this.segments = segments;
        this.branches = branches;
        Ends = new BranchEnd[branches.Length];
        FlowM3PerS = new double[branches.Length];
        TeeHeadM = new double[branches.Length];
    }

    /// <summary>What each branch meets at its far end; set before solving.</summary>
    public BranchEnd[] Ends { get; }

    /// <summary>Flow into each tray, m3/s; negative when water runs back.</summary>
    public double[] FlowM3PerS { get; }

    /// <summary>Head at each tee, m.</summary>
    public double[] TeeHeadM { get; }

    /// <summary>Flow through the pump, m3/s.</summary>
    public double PumpFlowM3PerS { get; private set; }

    /// <summary>Finds all flows.</summary>
    /// <param name="pump">What the pump gives.</param>
    /// <param name="reservoirHeadM">Height of the reservoir's surface, m, on the same scale as the ends.</param>
    /// <param name="screenLossK">Minor loss coefficient that a clogged screen adds before the lowest tee.</param>
    /// <param name="viscosity">Kinematic viscosity, m2/s.</param>
    public void Solve(in PumpLift pump, double reservoirHeadM, double screenLossK, double viscosity)
    {
        var run = segments[0].WithAdded(screenLossK);
        var low = reservoirHeadM;
        var high = reservoirHeadM + pump.ShutOffHeadM;
        foreach (var end in Ends)
        {
            if (end.Open)
            {
                low = Math.Min(low, end.HeadM);
                high = Math.Max(high, end.HeadM);
            }
        }

        var head = topHeadM > low && topHeadM < high ? topHeadM : (low + high) / 2;
        for (var round = 0; round < MaximumRounds; round++)
        {
            var missing = Sweep(head, pump, run, reservoirHeadM, viscosity, out var slope);
            if (missing > 0)
            {
                low = head;
            }
            else
            {
                high = head;
            }

            var next = head - missing / slope;
            if (!(next > low && next < high))
            {
                next = (low + high) / 2;
            }

            if (Math.Abs(next - head) <= PrecisionM)
            {
                break;
            }

            head = next;
        }

        topHeadM = head;
    }

    /// <summary>Nothing moves.</summary>
    public void Rest()
    {
        Array.Clear(FlowM3PerS);
        PumpFlowM3PerS = 0;
    }

    // How much more head the pump gives than the flows at this top head need, m, and its derivative.
    private double Sweep(
        double topHead, in PumpLift pump, in Pipe run, double reservoirHeadM, double viscosity, out double slope)
    {
        var head = topHead;
        var headSlope = 1.0;
        var flow = 0.0;
        var flowSlope = 0.0;
        for (var tier = branches.Length - 1; tier >= 0; tier--)
        {
            TeeHeadM[tier] = head;
            FlowM3PerS[tier] = BranchFlow(tier, head, viscosity, out var branchSlope);
            flow += FlowM3PerS[tier];
            flowSlope += branchSlope * headSlope;
            var loss = tier == 0
                ? run.Loss(flow, viscosity, out var lossSlope)
                : segments[tier].Loss(flow, viscosity, out lossSlope);
            head += loss;
            headSlope += lossSlope * flowSlope;
        }

        PumpFlowM3PerS = flow;
        var given = reservoirHeadM + pump.Head(flow, viscosity, out var pumpSlope);
        slope = pumpSlope * flowSlope - headSlope;
        return given - head;
    }

    private double BranchFlow(int tier, double head, double viscosity, out double slope)
    {
        ref readonly var end = ref Ends[tier];
        var drive = head - end.HeadM;
        slope = 0;
        if (!end.Open || drive == 0 || (drive < 0 && end.BackShare <= 0))
        {
            return 0;
        }

        var share = drive > 0 ? 1 : -end.BackShare;
        var flow = branches[tier].Flow(Math.Abs(drive), viscosity, FlowM3PerS[tier] / share, out var lossSlope);
        slope = Math.Abs(share) / lossSlope;
        return share * flow;
    }
}
