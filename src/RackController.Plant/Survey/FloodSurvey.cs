using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// What one flood of a rack does to each of its tiers, computed by the simulated rack: the supply network solved for the flows, one
/// flood as planned for its times, and one that is left running, from a reservoir that stays full, for the depths. Everything
/// works, nothing grows, and the trays begin empty. It is as good as the rack file's numbers: a measured rack is worth more.
/// </summary>
public sealed record FloodSurvey
{
    /// <summary>The site.</summary>
    public required Site Site { get; init; }

    /// <summary>The rack as surveyed; it may differ from the site's by changes that are tried.</summary>
    public required Rack Rack { get; init; }

    /// <summary>Its tiers, bottom first.</summary>
    public required ImmutableArray<TierSurvey> Tiers { get; init; }

    /// <summary>What the pump does as a flood begins.</summary>
    public required PumpDuty Duty { get; init; }

    /// <summary>When the planned fill ends, from the pump's start: after its time, or when the trays that can tell read full.</summary>
    public required Duration FillEnds { get; init; }

    /// <summary>How long the pump runs in the planned flood: fill and soak.</summary>
    public Duration PumpRun => FillEnds + Rack.Schedule.Floods.Soak;

    /// <summary>When the planned flood takes the reservoir down to its lowest working level, from the pump's start, which ends the
    /// flood; null when it does not.</summary>
    public required Duration? RunsLow { get; init; }

    /// <summary>The level at which the pump's work ends, mm: the low float, or the pump's intake without one.</summary>
    public required double LowestWorkingMm { get; init; }

    /// <summary>All that is wrong, in the order of <see cref="FloodProblem"/>, then bottom first.</summary>
    public ImmutableArray<FloodFinding> Findings
    {
        get
        {
            var plan = Rack.Schedule.Floods;

            // A fill that some trays end by reading full leaves the slower ones to the soak.
            var filledBy = FillEnds < plan.Fill.Limit ? PumpRun : plan.Fill.Limit;
            FloodFinding[] reservoir = RunsLow is not null ? [new(FloodProblem.ReservoirTooLow, null)] : [];
            return
            [
                .. Where(FloodProblem.TierStarved, tier => tier.IsStarved),
                .. Where(FloodProblem.TrayOverwhelmed, tier => tier.IsOverwhelmed),
                .. reservoir,
                .. Where(FloodProblem.FilledTooLate, tier => tier.Tier.InUse && tier.Filled > filledBy),
                .. Where(FloodProblem.DrainedTooLate, tier => tier.TakesPart && !(tier.Drained <= plan.Drain)),
            ];
        }
    }

    /// <summary>Surveys a rack.</summary>
    /// <param name="site">Its site, whose floats it has.</param>
    /// <param name="rack">The rack: that of the site, or the same with other pipes, trays or times.</param>
    public static FloodSurvey Of(Site site, Rack rack)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(rack);
        var floats = new RackFloats(site, rack);
        var flows = SteadyFlows.At(rack, rack.Reservoir.NormalVolumeL / rack.Reservoir.AreaM2);
        var flowsAtLowest = SteadyFlows.At(rack, floats.LowestWorkingMm).FlowsLpm;
        var endless = FloodTrial.LeftRunning(rack, floats);
        var planned = FloodTrial.AsPlanned(rack, floats);
        return new FloodSurvey
        {
            Site = site,
            Rack = rack,
            Duty = flows.Duty,
            FillEnds = planned.FillEnds,
            RunsLow = planned.RunsLow,
            LowestWorkingMm = floats.LowestWorkingMm,
            Tiers =
            [
                .. rack.Tiers.Select((tier, index) => new TierSurvey
                {
                    Tier = tier,
                    TakesPart = FloodTrial.TakesPart(tier),
                    FlowLpm = flows.FlowsLpm[index],
                    FlowAtLowestLpm = flowsAtLowest[index],
                    HoldsFullLpm = endless.HoldsFullLpm(index),
                    Filled = planned.Filled[index] ?? endless.Filled[index],
                    SettledMm = endless.DepthMm(index),
                    CarriedLpm = endless.CarriedLpm(index, out var heldBack),
                    StackHoldsBack = heldBack,
                    Drained = planned.Drained[index],
                    HighFloatMm = floats.HighMm(tier),
                }),
            ],
        };
    }

    private IEnumerable<FloodFinding> Where(FloodProblem problem, Func<TierSurvey, bool> has) =>
        Tiers.Where(has).Select(tier => new FloodFinding(problem, tier.Tier.Number));
}
