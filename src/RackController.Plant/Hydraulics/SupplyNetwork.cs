namespace RackController.Plant;

/// <summary>
/// Pump, riser and branches of one rack: a ladder of riser segments with a branch at every tee, solved as one network by
/// <see cref="NetworkHeads"/>, which converges from anywhere. Close to the last solution, as an integrator mostly asks, a
/// <see cref="NetworkTangent"/> answers at a fraction of the work.
/// </summary>
internal sealed class SupplyNetwork
{
    private readonly NetworkHeads heads;
    private readonly NetworkTangent tangent;

    /// <summary>Lays the pipes.</summary>
    /// <param name="segments">Riser segments, from the pump upwards; segment k ends at tee k.</param>
    /// <param name="branches">Branches in riser order.</param>
    public SupplyNetwork(Pipe[] segments, Pipe[] branches)
    {
        heads = new NetworkHeads(segments, branches);
        tangent = new NetworkTangent(segments, branches);
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

    /// <summary>Finds all flows.</summary>
    /// <param name="pump">What the pump gives.</param>
    /// <param name="reservoirHeadM">Height of the reservoir's surface, m, on the same scale as the ends.</param>
    /// <param name="screenLossK">Minor loss coefficient that a clogged screen adds before the lowest tee.</param>
    /// <param name="viscosity">Kinematic viscosity, m2/s.</param>
    public void Solve(in PumpLift pump, double reservoirHeadM, double screenLossK, double viscosity)
    {
        var supply = new SupplyConditions(pump, screenLossK, viscosity);
        if (!tangent.TrySolve(supply, reservoirHeadM, Ends, FlowM3PerS, TeeHeadM))
        {
            heads.Solve(supply, reservoirHeadM, Ends, FlowM3PerS, TeeHeadM);
            tangent.Touch(supply, FlowM3PerS);
        }
    }

    /// <summary>Nothing moves.</summary>
    public void Rest() => Array.Clear(FlowM3PerS);
}
