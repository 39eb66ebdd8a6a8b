namespace RackController.Plant;

/// <summary>What a branch carries at a head of its tee.</summary>
/// <param name="HeadM">Head at the tee, m.</param>
/// <param name="FlowM3PerS">Flow into the tray, m3/s; negative when water runs back.</param>
/// <param name="FlowPerHead">Its derivative by the head, m2/s; 0 where nothing can flow.</param>
internal readonly record struct BranchPoint(double HeadM, double FlowM3PerS, double FlowPerHead)
{
    /// <summary>The flow of a branch, found from its pipe.</summary>
    /// <param name="branch">The pipe.</param>
    /// <param name="end">What it meets.</param>
    /// <param name="headM">Head at its tee, m.</param>
    /// <param name="viscosity">Kinematic viscosity, m2/s.</param>
    /// <param name="last">Where the search begins; any.</param>
    public static BranchPoint At(in Pipe branch, in BranchEnd end, double headM, double viscosity, in BranchPoint last)
    {
        var drive = headM - end.HeadM;
        if (IsHeld(end, drive))
        {
            return new BranchPoint(headM, 0, 0);
        }

        var share = ShareOf(end, drive);
        var guess = last.FlowAt(headM) / share;
        var flow = branch.Flow(Math.Abs(drive), viscosity, guess, out var slope);
        return new BranchPoint(headM, share * flow, Math.Abs(share) / slope);
    }

    /// <summary>Flow at a head close to that, m3/s.</summary>
    public double FlowAt(double headM) => FlowM3PerS + FlowPerHead * (headM - HeadM);

    /// <summary>Whether a flow is what a head drives, to a precision of the head.</summary>
    /// <param name="branch">The pipe.</param>
    /// <param name="end">What it meets.</param>
    /// <param name="headM">Head at its tee, m.</param>
    /// <param name="viscosity">Kinematic viscosity, m2/s.</param>
    /// <param name="flow">Flow into the tray, m3/s.</param>
    /// <param name="precisionM">How far the head lost may lie from the head there is, m.</param>
    public static bool Balances(
        in Pipe branch, in BranchEnd end, double headM, double viscosity, double flow, double precisionM)
    {
        var drive = headM - end.HeadM;
        if (IsHeld(end, drive))
        {
            return flow == 0;
        }

        var loss = branch.Loss(flow / ShareOf(end, drive), viscosity, out _);
        return Math.Abs(loss - Math.Abs(drive)) <= precisionM;
    }

    private static bool IsHeld(in BranchEnd end, double drive) => !end.Open || (drive <= 0 && end.BackShare <= 0);

    private static double ShareOf(in BranchEnd end, double drive) => drive >= 0 ? 1 : -end.BackShare;
}
