using System.Collections.Immutable;

namespace RackController.Bench;

/// <summary>All that a campaign found.</summary>
public sealed record CampaignFindings
{
    /// <summary>What was tried.</summary>
    public required CampaignPlan Plan { get; init; }

    /// <summary>The rack file, as the person named it.</summary>
    public required string RackFile { get; init; }

    /// <summary>The command that does the same again.</summary>
    public required string Command { get; init; }

    /// <summary>Outcomes of the cases that ran, in the order of the plan.</summary>
    public required ImmutableArray<CaseOutcome> Outcomes { get; init; }

    /// <summary>How long the cases took, s.</summary>
    public required double CasesTookS { get; init; }

    /// <summary>The failures, sorted and shrunk.</summary>
    public required ImmutableArray<FailureGroup> Failures { get; init; }

    /// <summary>How soon single faults were noticed, mode by mode.</summary>
    public required ImmutableArray<TripTimes> TripTimes { get; init; }

    /// <summary>Which wired parts had to act.</summary>
    public required ImmutableArray<BackstopUse> Backstops { get; init; }

    /// <summary>What acted although nothing was wrong.</summary>
    public required QuietYears Quiet { get; init; }

    /// <summary>Simulated rack-days of all cases.</summary>
    public double RackDays => Outcomes.Sum(outcome => outcome.RackDays(Plan.Site));

    /// <summary>Simulated rack-days in a second.</summary>
    public double RackDaysPerSecond => CasesTookS > 0 ? RackDays / CasesTookS : 0;

    /// <summary>How many cases failed in a way.</summary>
    /// <param name="how">The way.</param>
    public int FailedBy(FailureClass how) => Outcomes.Count(outcome => outcome.Class == how);

    /// <summary>Whether nothing failed.</summary>
    public bool Passed => Failures.IsEmpty;

    /// <summary>Hazard by mode: in how many of the cases in which a mode struck, alone or with another, each hazard showed. Every mode
    /// that was played, the worst first.</summary>
    public ImmutableArray<ModeHazards> HazardsByMode =>
    [
        .. from outcome in Outcomes
           from mode in outcome.Case.Faults.Select(fault => fault.Instance.Mode).DistinctBy(mode => mode.Id)
           group outcome by mode into struck
           let kinds = struck.SelectMany(one => one.Hazards.Select(hazard => hazard.Kind).Distinct()).ToLookup(kind => kind)
           orderby struck.Count(one => !one.Hazards.IsEmpty) descending, FaultModes.All.IndexOf(struck.Key)
           select new ModeHazards(struck.Key, struck.Count(), [.. Enum.GetValues<HazardKind>().Select(kind => kinds[kind].Count())]),
    ];

    /// <summary>Sorts what came out of a campaign.</summary>
    /// <param name="plan">The campaign.</param>
    /// <param name="rackFile">The rack file, as the person named it.</param>
    /// <param name="command">The command that does the same again.</param>
    /// <param name="outcomes">Its outcomes.</param>
    /// <param name="casesTookS">How long the cases took, s.</param>
    /// <param name="stop">Ends the search for false trips early.</param>
    public static CampaignFindings Of(
        CampaignPlan plan, string rackFile, string command, ImmutableArray<CaseOutcome> outcomes, double casesTookS, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new CampaignFindings
        {
            Plan = plan,
            RackFile = rackFile,
            Command = command,
            Outcomes = outcomes,
            CasesTookS = casesTookS,
            Failures = FailureGroups.Of(plan, outcomes),
            TripTimes = Bench.TripTimes.Of(outcomes),
            Backstops = BackstopUse.Of(outcomes),
            Quiet = QuietYears.Run(plan, stop),
        };
    }

    /// <summary>A group's smallest case as a scenario.</summary>
    /// <param name="number">The group's number, from 1.</param>
    /// <param name="rackFile">The rack file, as seen from where the scenario will lie.</param>
    public Scenario ScenarioOf(int number, string rackFile) => CaseScenario.Of(
        Plan.Site, Failures[number - 1].Smallest, $"failure-{number:00}", rackFile, Command);
}

/// <summary>Which hazards showed where a mode struck.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Cases">In how many cases it struck.</param>
/// <param name="Counts">In how many of them each kind of hazard showed, by <see cref="HazardKind"/>.</param>
public sealed record ModeHazards(FaultMode Mode, int Cases, ImmutableArray<int> Counts)
{
    /// <summary>Whether any showed.</summary>
    public bool HasAny => Counts.Any(count => count > 0);
}
