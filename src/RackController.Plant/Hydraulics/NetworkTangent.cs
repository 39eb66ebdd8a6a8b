namespace RackController.Plant;

/// <summary>
/// A supply network close to a solution that is known: every pipe and the pump replaced by its tangent there, so that the flows for
/// slightly other heights of water follow from one pass of linear equations. It is Newton's method for all flows at once: what it
/// leaves is of the order of the square of the change, and it says when the change is too large for it to be believed.
/// </summary>
internal sealed class NetworkTangent(Pipe[] segments, Pipe[] branches)
{
    // A change of a ten-thousandth leaves an error near 1e-8.
    private const double BelievedShare = 1e-4;

    private readonly PipeTangent[] branchTangents = new PipeTangent[branches.Length];
    private readonly PipeTangent[] segmentTangents = new PipeTangent[branches.Length];
    private readonly double[] flowPerHead = new double[branches.Length];
    private readonly double[] headPerHead = new double[branches.Length];
    private SupplyConditions known;
    private double pumpHead;
    private double pumpSlope;
    private bool isKnown;

    /// <summary>Takes a solution as the point to be close to, if the pump runs and every flow goes forward or nowhere.</summary>
    public void Touch(in SupplyConditions supply, ReadOnlySpan<double> flows)
    {
        known = supply;
        isKnown = supply.Pump.ShutOffHeadM > 0;
        foreach (var flow in flows)
        {
            isKnown &= flow >= 0;
        }

        if (isKnown)
        {
            Linearise(flows);
        }
    }

    /// <summary>Finds the flows.</summary>
    /// <returns>Whether they can be believed; if not, they are no more than a place to search from.</returns>
    public bool TrySolve(
        in SupplyConditions supply, double reservoirHeadM, ReadOnlySpan<BranchEnd> ends, Span<double> flows, Span<double> teeHeads)
    {
        if (!isKnown || known != supply || !Solve(reservoirHeadM, ends, flows, teeHeads))
        {
            return false;
        }

        if (IsClose(flows))
        {
            return true;
        }

        Linearise(flows);
        return Solve(reservoirHeadM, ends, flows, teeHeads) && IsClose(flows);
    }

    private void Linearise(ReadOnlySpan<double> flows)
    {
        var sum = 0.0;
        for (var tier = flows.Length - 1; tier >= 0; tier--)
        {
            sum += flows[tier];
            var segment = tier == 0 ? segments[0].WithAdded(known.ScreenLossK) : segments[tier];
            branchTangents[tier] = PipeTangent.Of(branches[tier], flows[tier], known.Viscosity);
            segmentTangents[tier] = PipeTangent.Of(segment, sum, known.Viscosity);
        }

        pumpHead = known.Pump.Head(sum, known.Viscosity, out pumpSlope);
    }

    // Down the ladder, everything as a fixed part and a part in proportion to the head at the top tee; at the pump, that head follows.
    private bool Solve(double reservoirHeadM, ReadOnlySpan<BranchEnd> ends, Span<double> flows, Span<double> teeHeads)
    {
        var (head, perHead, sum, sumPerHead) = (0.0, 1.0, 0.0, 0.0);
        for (var tier = flows.Length - 1; tier >= 0; tier--)
        {
            var carries = ends[tier].Open && branchTangents[tier].Carries;
            teeHeads[tier] = head;
            headPerHead[tier] = perHead;
            flows[tier] = carries ? branchTangents[tier].FlowAt(head - ends[tier].HeadM) : 0;
            flowPerHead[tier] = carries ? perHead / branchTangents[tier].Slope : 0;
            sum += flows[tier];
            sumPerHead += flowPerHead[tier];
            head += segmentTangents[tier].LossAt(sum);
            perHead += segmentTangents[tier].Slope * sumPerHead;
        }

        var given = reservoirHeadM + pumpHead + pumpSlope * (sum - segmentTangents[0].FlowM3PerS);
        var top = (given - head) / (perHead - pumpSlope * sumPerHead);
        var holds = true;
        for (var tier = 0; tier < flows.Length; tier++)
        {
            teeHeads[tier] += headPerHead[tier] * top;
            flows[tier] += flowPerHead[tier] * top;
            holds &= branchTangents[tier].Carries ? flows[tier] > 0 || !ends[tier].Open : StaysStill(ends[tier], teeHeads[tier]);
        }

        return holds;
    }

    private static bool StaysStill(in BranchEnd end, double teeHeadM) =>
        !end.Open || (end.BackShare <= 0 && teeHeadM <= end.HeadM);

    private bool IsClose(ReadOnlySpan<double> flows)
    {
        for (var tier = 0; tier < flows.Length; tier++)
        {
            var before = branchTangents[tier].FlowM3PerS;
            if (Math.Abs(flows[tier] - before) > BelievedShare * before)
            {
                return false;
            }
        }

        return true;
    }
}
