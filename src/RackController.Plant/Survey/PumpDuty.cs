namespace RackController.Plant;

/// <summary>What the pump does as a flood begins, all valves open and the reservoir at its normal volume: where its head goes on the way
/// to the highest tier that takes part. Lift, riser and branch add up to the head.</summary>
/// <param name="TopTier">The tier whose outlet is highest, 1 at the bottom.</param>
/// <param name="FlowLpm">What it gives to all tiers together, L/min.</param>
/// <param name="HeadM">The head that it adds at that flow, m.</param>
/// <param name="LiftM">From the reservoir's surface up to the outlet of the highest tier, m.</param>
/// <param name="RiserLossM">What riser, tees and screen lose up to its tee, m.</param>
/// <param name="BranchLossM">What its branch loses, m; below 0 where the water does not come up so far.</param>
public sealed record PumpDuty(int TopTier, double FlowLpm, double HeadM, double LiftM, double RiserLossM, double BranchLossM)
{
    /// <summary>Whether water comes out at the highest tier.</summary>
    public bool ReachesTop => BranchLossM > 0;
}
