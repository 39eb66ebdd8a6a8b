using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>More room for water on its way down: standpipe, drain stack and weep.</summary>
internal static class DrainRemedies
{
    // Inside diameters of schedule 40 pipes of 1 1/4, 1 1/2 and 2 in (ASME B36.10, from a table of the library fluids).
    private static readonly double[] pipeBoresMm = [35.08, 40.94, 52.48];

    private static readonly double[] weepsMm = [.. Enumerable.Range(8, 33).Select(half => half / 2.0)];

    public static IEnumerable<FloodChange> WiderStandpipe(FloodSurvey survey)
    {
        var numbers = survey.TiersWith(FloodProblem.TrayOverwhelmed);
        return
            from boreMm in pipeBoresMm
            where numbers.Any(number => survey.Rack.Tier(number).Tray.StandpipeBoreMm < boreMm)
            select new FloodChange(
                FloodEffort.Work,
                $"widen the standpipe of {TierWords.List(numbers)} to a bore of {boreMm:0.0} mm "
                + $"(now {Bores(survey, numbers, tray => tray.StandpipeBoreMm)})",
                survey.Rack.WithTiers(numbers, tier => tier with
                {
                    Tray = tier.Tray with { StandpipeBoreMm = Math.Max(boreMm, tier.Tray.StandpipeBoreMm) },
                }));
    }

    public static IEnumerable<FloodChange> WiderStack(FloodSurvey survey)
    {
        var drain = survey.Rack.Drain;
        return
            from step in Enumerable.Range(1, survey.Tiers.Any(tier => tier.StackHoldsBack) ? 25 : 0)
            let capacityLpm = Math.Ceiling(drain.CapacityLpm * Math.Pow(1.1, step))
            let boreMm = drain.BoreMm * Math.Pow(capacityLpm / drain.CapacityLpm, 3.0 / 8)
            select new FloodChange(
                FloodEffort.Part,
                $"use a drain stack that carries {capacityLpm:0} L/min (this one {drain.CapacityLpm:0.#}), which the stack formula "
                + $"gives for a bore of {boreMm:0} mm instead of {drain.BoreMm:0.#} mm",
                survey.Rack with { Drain = new DrainStack(boreMm, capacityLpm) });
    }

    public static IEnumerable<FloodChange> WiderWeep(FloodSurvey survey)
    {
        var numbers = survey.TiersWith(FloodProblem.DrainedTooLate);
        return
            from weepMm in weepsMm
            where numbers.All(number => survey.Rack.Tier(number).Tray.WeepBoreMm < weepMm)
            select new FloodChange(
                FloodEffort.Work,
                $"drill the weep of {TierWords.List(numbers)} to {weepMm:0.#} mm (now {Bores(survey, numbers, tray => tray.WeepBoreMm)})",
                survey.Rack.WithTiers(numbers, tier => tier with { Tray = tier.Tray with { WeepBoreMm = weepMm } }));
    }

    // A tray without a weep drains only through a branch that ends below its water.
    public static IEnumerable<FloodChange> OutletAtTheFloor(FloodSurvey survey)
    {
        var numbers = survey.TiersWith(FloodProblem.DrainedTooLate);
        if (!survey.Rack.Supply.HasCheckValve)
        {
            yield return new FloodChange(
                FloodEffort.Work,
                $"let the branch of {TierWords.List(numbers)} end at the tray's floor, so that its water runs back",
                survey.Rack.WithTiers(numbers, tier => tier with { Branch = tier.Branch with { OutletAboveTrayFloorMm = 0 } }));
        }
    }

    private static string Bores(FloodSurvey survey, int[] numbers, Func<FloodTray, double> boreMmOf) => string.Join(
        ", ",
        numbers.Select(number => boreMmOf(survey.Rack.Tier(number).Tray)).Distinct().Order()
            .Select(boreMm => boreMm > 0 ? $"{boreMm:0.#} mm" : "none"));
}
