using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>A change of a rack that may help.</summary>
/// <param name="Effort">How much it takes to do.</param>
/// <param name="Words">What a person is told to do.</param>
/// <param name="Rack">The rack with it.</param>
internal sealed record FloodChange(FloodEffort Effort, string Words, Rack Rack);

/// <summary>What a change asks of a person; the numbers weigh them against each other.</summary>
internal enum FloodEffort
{
    /// <summary>Something is set: a valve, a time, a level.</summary>
    Setting = 1,

    /// <summary>Something is drilled or replaced on a tier.</summary>
    Work = 4,

    /// <summary>A main part is bought.</summary>
    Part = 10,
}

/// <summary>The remedies that are tried for a problem, the easiest to do first. Each offers its sizes, the smallest first.</summary>
internal static class FloodRemedies
{
    public static Func<FloodSurvey, IEnumerable<FloodChange>>[] For(FloodProblem problem) => problem switch
    {
        FloodProblem.ReservoirTooLow => [ReservoirRemedies.FillHigher, ReservoirRemedies.UseALarger],
        FloodProblem.TierStarved => [SupplyRemedies.Balance, SupplyRemedies.NarrowBranches, SupplyRemedies.StrongerPump],
        FloodProblem.TrayOverwhelmed =>
        [
            SupplyRemedies.ThrottleBranches, SupplyRemedies.ThrottleRun, SupplyRemedies.ThrottleAllBranches,
            DrainRemedies.WiderStandpipe, DrainRemedies.WiderStack, SupplyRemedies.WeakerPump,
        ],
        FloodProblem.FilledTooLate => [TimeRemedies.LongerFill, SupplyRemedies.Balance, SupplyRemedies.StrongerPump],
        FloodProblem.DrainedTooLate =>
            [TimeRemedies.LongerDrain, DrainRemedies.WiderStack, DrainRemedies.WiderWeep, DrainRemedies.OutletAtTheFloor],
        _ => throw new InvariantBrokenException("every problem of a flood has its remedies"),
    };

    /// <summary>The numbers of the tiers with a problem.</summary>
    public static int[] TiersWith(this FloodSurvey survey, FloodProblem problem) =>
        [.. survey.Findings.Where(finding => finding.Problem == problem).Select(finding => finding.TierNumber).OfType<int>()];

    /// <summary>The rack with some of its tiers changed.</summary>
    public static Rack WithTiers(this Rack rack, int[] numbers, Func<Tier, Tier> change) => rack with
    {
        Tiers = [.. rack.Tiers.Select(tier => numbers.Contains(tier.Number) ? change(tier) : tier)],
    };
}
