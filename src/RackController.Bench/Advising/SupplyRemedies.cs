using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>More water for some tiers, less for others: valves, bores and pumps.</summary>
internal static class SupplyRemedies
{
    private const int ThrottleSteps = 16;
    private const double ThrottleFactor = 1.25;

    private static readonly double[] boresMm = [12, 10, 9, 8, 7, 6, 5, 4];

    public static IEnumerable<FloodChange> Balance(FloodSurvey survey)
    {
        if (BranchBalance.Of(survey.Rack) is { } balanced)
        {
            yield return new FloodChange(FloodEffort.Setting, ValveWords.Of(survey.Rack, balanced), balanced);
        }
    }

    public static IEnumerable<FloodChange> NarrowBranches(FloodSurvey survey) => boresMm
        .Where(boreMm => survey.Rack.Tiers.Any(tier => tier.Branch.BoreMm > boreMm))
        .Select(boreMm => new FloodChange(
            FloodEffort.Work,
            $"narrow every branch to a bore of {boreMm:0} mm (now {survey.Rack.Tiers.Max(tier => tier.Branch.BoreMm):0.#} mm)",
            survey.Rack with
            {
                Tiers =
                [
                    .. survey.Rack.Tiers.Select(tier =>
                        tier with { Branch = tier.Branch with { BoreMm = Math.Min(boreMm, tier.Branch.BoreMm) } }),
                ],
            }));

    public static IEnumerable<FloodChange> ThrottleBranches(FloodSurvey survey) =>
        Throttle(survey.Rack, survey.TiersWith(FloodProblem.TrayOverwhelmed));

    public static IEnumerable<FloodChange> ThrottleAllBranches(FloodSurvey survey) =>
        Throttle(survey.Rack, [.. survey.Rack.Tiers.Select(tier => tier.Number)]);

    public static IEnumerable<FloodChange> ThrottleRun(FloodSurvey survey) =>
        from step in Enumerable.Range(1, ThrottleSteps)
        let supply = survey.Rack.Supply with { RunMinorLossK = Throttled(survey.Rack.Supply.RunMinorLossK, step) }
        let degrees = BallValve.ClosedDegrees(supply.RunMinorLossK - survey.Rack.Supply.RunMinorLossK)
        select new FloodChange(
            FloodEffort.Setting,
            $"throttle the pipe behind the pump from a minor loss of {survey.Rack.Supply.RunMinorLossK:0.#} to "
            + $"{supply.RunMinorLossK:0.#} (a ball valve there {degrees:0}° closed)",
            survey.Rack with { Supply = supply });

    private static IEnumerable<FloodChange> Throttle(Rack rack, int[] numbers) =>
        from step in Enumerable.Range(1, ThrottleSteps)
        let changed = rack.WithTiers(
            numbers,
            tier => tier with { Branch = tier.Branch with { MinorLossK = Throttled(tier.Branch.MinorLossK, step) } })
        select new FloodChange(FloodEffort.Setting, ValveWords.Of(rack, changed), changed);

    public static IEnumerable<FloodChange> StrongerPump(FloodSurvey survey) =>
        from percent in Enumerable.Range(1, 30)
        let stronger = WithPumpSpeed(survey.Rack, 1 + 0.05 * percent)
        let balanced = BranchBalance.Of(stronger)
        where balanced is not null
        select new FloodChange(
            FloodEffort.Part, $"{PumpWords(survey.Rack, balanced)}, and {ValveWords.Of(survey.Rack, balanced)}", balanced);

    public static IEnumerable<FloodChange> WeakerPump(FloodSurvey survey) =>
        from percent in Enumerable.Range(1, 12)
        let weaker = WithPumpSpeed(survey.Rack, 1 - 0.05 * percent)
        select new FloodChange(FloodEffort.Part, PumpWords(survey.Rack, weaker), weaker);

    private static double Throttled(double minorLossK, int step) => Math.Round(Math.Max(minorLossK, 1) * Math.Pow(ThrottleFactor, step));

    // A family of pumps differs about as one pump does at several speeds: flow as the speed, head as its square.
    private static Rack WithPumpSpeed(Rack rack, double speed) => rack with
    {
        // Another pump is a new one: what was measured of the old one no longer holds.
        Pump = rack.Pump with { Curve = rack.PumpCurveAsMeasured.AtSpeed(speed) },
        Measured = rack.Measured is { } measured ? measured with { PumpSpeed = new MeasuredFigure(1, 0) } : null,
    };

    // Said at half its greatest flow, where pumps are rated.
    private static string PumpWords(Rack before, Rack after)
    {
        var (old, curve) = (before.PumpCurveAsMeasured, after.PumpCurveAsMeasured);
        var flowLpm = curve.MaxFlowLpm / 2;
        var headM = curve.ShutOffHeadM * (1 - Math.Pow(0.5, curve.Exponent));
        var oldLpm = headM < old.ShutOffHeadM ? old.MaxFlowLpm * Math.Pow(1 - headM / old.ShutOffHeadM, 1 / old.Exponent) : 0;
        return $"use a pump that gives {flowLpm:0} L/min at {headM:0.0} m (this one gives {oldLpm:0} L/min there)";
    }
}
