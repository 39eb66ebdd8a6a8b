using System.Collections.Immutable;

namespace RackController.Bench;

/// <summary>Runs every case of a plan on all cores and keeps going after a failure. The outcomes do not depend on how many threads
/// ran them.</summary>
public static class Campaign
{
    /// <summary>Runs it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="finished">Told of each outcome, from any thread, one at a time.</param>
    /// <param name="stop">Ends it early; what was done until then is kept.</param>
    /// <returns>The outcomes, in the order of the plan.</returns>
    public static ImmutableArray<CaseOutcome> Run(CampaignPlan plan, Action<CaseOutcome> finished, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(finished);
        var outcomes = new CaseOutcome?[plan.Count];
        var telling = new Lock();
        var next = -1;
        void Work()
        {
            int index;
            while (!stop.IsCancellationRequested && (index = Interlocked.Increment(ref next)) < plan.Count)
            {
                if (plan.Draw(index) is { } drawn)
                {
                    var outcome = CaseRun.Run(plan.Site, plan.Days, drawn);
                    outcomes[index] = outcome;
                    lock (telling)
                    {
                        finished(outcome);
                    }
                }
            }
        }

        var threads = Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new Thread(Work)).ToList();
        threads.ForEach(thread => thread.Start());
        threads.ForEach(thread => thread.Join());
        return [.. outcomes.OfType<CaseOutcome>()];
    }
}
