using System.Collections.Immutable;
using NodaTime;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>One case of a campaign: what fails, when, for how long and how much, in a run of about a day.</summary>
/// <param name="Name">Names it among all of its campaign: <c>relay welded @ north/pump + leak rope dead @ north/leak rope,
/// filling</c>.</param>
/// <param name="Phase">The phase that the first fault strikes in.</param>
/// <param name="Start">When the run begins.</param>
/// <param name="Faults">What fails, the first first.</param>
/// <param name="Breakers">Whether breakers open early or late.</param>
public sealed record CampaignCase(
    string Name, CasePhase Phase, Instant Start, ImmutableArray<DrawnFault> Faults, BreakerEdge Breakers)
{
    /// <summary>When the last fault is over, since the run began.</summary>
    public Duration AllOver => Faults.Max(fault => fault.Ends);

    /// <summary>The run's events, in order.</summary>
    internal ImmutableArray<ScenarioEvent> Events =>
        [.. Faults.SelectMany(fault => fault.Instance.Mode.Happens(fault)).OrderBy(happening => happening.At)];
}
