using System.Collections.Immutable;

namespace RackController.Bench;

/// <summary>Runs the cases of a plan on all cores and keeps going after a failure. What comes out does not depend on how many threads
/// ran it; only where a campaign is stopped by hand, it depends on when.</summary>
public sealed class Campaign
{
    private readonly CampaignPlan plan;
    private readonly Action<CampaignProgress> progress;
    private readonly CaseOutcome?[] outcomes;
    private readonly bool[] isDone;
    private readonly Lock keeping = new();
    private int taken = -1;
    private int reached;
    private double reachedDays;
    private CampaignProgress soFar;

    private Campaign(CampaignPlan plan, Action<CampaignProgress> progress)
    {
        this.plan = plan;
        this.progress = progress;
        outcomes = new CaseOutcome?[plan.Count];
        isDone = new bool[plan.Count];
        soFar = new CampaignProgress(0, plan.Count, 0, 0);
    }

    /// <summary>Runs it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="progress">Told of each case that has run, from any thread, one at a time.</param>
    /// <param name="stop">Ends it early; what was done until then is kept.</param>
    /// <returns>The outcomes, in the order of the plan.</returns>
    public static ImmutableArray<CaseOutcome> Run(CampaignPlan plan, Action<CampaignProgress> progress, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(progress);
        var campaign = new Campaign(plan, progress);
        Workers.Run(() => campaign.RunOne(stop));
        return [.. campaign.outcomes[..campaign.End].OfType<CaseOutcome>()];
    }

    // Cases that were begun ahead of the last one within the budget are not counted, or the count would hang on the threads.
    private int End => IsSpent ? reached : outcomes.Length;

    private bool IsSpent => reachedDays >= (plan.Options.RackDays ?? double.PositiveInfinity);

    private bool RunOne(CancellationToken stop)
    {
        int index;
        lock (keeping)
        {
            if (stop.IsCancellationRequested || IsSpent || taken + 1 >= outcomes.Length)
            {
                return false;
            }

            index = ++taken;
        }

        Keep(index, plan.Draw(index) is { } drawn ? CaseRun.Run(plan.Site, plan.Days, drawn) : null);
        return true;
    }

    private void Keep(int index, CaseOutcome? outcome)
    {
        lock (keeping)
        {
            outcomes[index] = outcome;
            isDone[index] = true;
            while (!IsSpent && reached < isDone.Length && isDone[reached])
            {
                reachedDays += outcomes[reached++]?.RackDays(plan.Site) ?? 0;
            }

            soFar = new CampaignProgress(
                soFar.Done + 1, soFar.Count, soFar.RackDays + (outcome?.RackDays(plan.Site) ?? 0),
                soFar.Failed + (outcome is { Failed: true } ? 1 : 0));
            progress(soFar);
        }
    }
}
