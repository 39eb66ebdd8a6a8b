using RackController.Plant;

namespace RackController.Bench;

/// <summary>Whether the pump fits its rack, with the arithmetic: does it lift, does it fill in time, and do the drains keep up.</summary>
public static class PumpWording
{
    /// <summary>It in lines, without a point at their ends.</summary>
    /// <param name="survey">The survey.</param>
    public static IEnumerable<string> Lines(FloodSurvey survey)
    {
        ArgumentNullException.ThrowIfNull(survey);
        var taking = survey.Tiers.Where(tier => tier.TakesPart).ToList();
        if (taking.Count == 0)
        {
            yield break;
        }

        yield return Lifts(survey);
        var slowest = taking.MaxBy(tier => tier.Filled?.TotalSeconds ?? double.PositiveInfinity)!;
        yield return slowest.Filled is { } filled
            ? $"fills: tier {slowest.Tier.Number}, the last, gets {slowest.FlowLpm:0.0} L/min and is full after "
                + $"{filled.TotalMinutes:0.0} min of the {survey.PumpRun.TotalMinutes:0.#} min that the pump runs"
            : $"fills: tier {slowest.Tier.Number} gets {slowest.FlowLpm:0.0} L/min, its weep takes {slowest.HoldsFullLpm:0.0} L/min "
                + "when it is full: it never is";
        var highest = taking.MinBy(RoomMm)!;
        yield return $"drains: tier {highest.Tier.Number} comes closest to {Mark(highest)}: it stands at {highest.SettledMm:0} mm, "
            + $"{Math.Abs(RoomMm(highest)):0} mm {(RoomMm(highest) > 0 ? "below" : "above")} it; all together drain "
            + $"{taking.Sum(tier => tier.CarriedLpm):0.0} L/min then, and the stack carries {survey.Rack.Drain.CapacityLpm:0.0} L/min";
    }

    private static string Lifts(FloodSurvey survey)
    {
        var (duty, most) = (survey.Duty, survey.Rack.PumpCurveAsMeasured);
        return duty.ReachesTop
            ? $"lifts: {duty.HeadM:0.00} m at {duty.FlowLpm:0.0} L/min: {duty.LiftM:0.00} m up to tier {duty.TopTier}, "
                + $"{duty.RiserLossM:0.00} m lost in the riser, {duty.BranchLossM:0.00} m in its branch; the pump shuts off at "
                + $"{most.ShutOffHeadM:0.00} m"
            : $"lifts: {duty.HeadM:0.00} m at {duty.FlowLpm:0.0} L/min, of which the riser loses {duty.RiserLossM:0.00} m: what is "
                + $"left does not reach tier {duty.TopTier}, {duty.LiftM:0.00} m up; the pump shuts off at {most.ShutOffHeadM:0.00} m";
    }

    private static double LimitMm(TierSurvey tier) => Math.Min(tier.HighFloatMm ?? double.MaxValue, tier.Tier.Tray.RimDepthMm);

    private static double RoomMm(TierSurvey tier) => LimitMm(tier) - tier.SettledMm;

    private static string Mark(TierSurvey tier) => tier.HighFloatMm <= tier.Tier.Tray.RimDepthMm ? "its high float" : "its rim";
}
