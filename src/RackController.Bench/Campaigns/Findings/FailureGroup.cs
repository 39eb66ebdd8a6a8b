using System.Collections.Immutable;

namespace RackController.Bench;

/// <summary>Failures that are one and the same: the same class and hazard, by the same modes.</summary>
/// <param name="Words">The modes and what came of them.</param>
/// <param name="Count">How many cases failed so.</param>
/// <param name="Smallest">The smallest case that still fails so.</param>
public sealed record FailureGroup(string Words, int Count, CaseOutcome Smallest);

/// <summary>Sorts failures into groups and shrinks the first of each.</summary>
internal static class FailureGroups
{
    /// <summary>As many groups as anybody will look through; the cases of the rest are counted all the same.</summary>
    private const int MostShrunk = 100;

    /// <summary>Groups the failures of a campaign.</summary>
    /// <param name="plan">The campaign.</param>
    /// <param name="outcomes">Its outcomes.</param>
    public static ImmutableArray<FailureGroup> Of(CampaignPlan plan, ImmutableArray<CaseOutcome> outcomes)
    {
        var failures = outcomes.Where(outcome => outcome.Failed).ToList();
        var alone = failures.Where(failure => failure.Case.Faults.Length == 1).Select(Signature).ToHashSet(StringComparer.Ordinal);
        var groups = failures.GroupBy(failure => Explained(failure, alone) ?? Signature(failure)).ToList();
        var shrunk = new CaseOutcome[Math.Min(MostShrunk, groups.Count)];
        var next = -1;
        Workers.Run(() =>
        {
            var index = Interlocked.Increment(ref next);
            if (index >= shrunk.Length)
            {
                return false;
            }

            shrunk[index] = CaseShrinker.Shrink(plan.Site, plan.Days, groups[index].First());
            return true;
        });

        // Two that looked unlike may shrink to the same.
        return
        [
            .. groups.Select((group, index) => (Count: group.Count(), Smallest: index < shrunk.Length ? shrunk[index] : group.First()))
                .GroupBy(group => Signature(group.Smallest))
                .Select(same => new FailureGroup(same.Key, same.Sum(group => group.Count), same.First().Smallest))
                .OrderBy(group => group.Smallest.Class).ThenByDescending(group => group.Count),
        ];
    }

    // A pair that fails as one of the two does alone is that failure once more.
    private static string? Explained(CaseOutcome failure, HashSet<string> alone) => failure.Case.Faults.Length == 1
        ? null
        : failure.Case.Faults.Select(fault => Signature(failure, [fault])).FirstOrDefault(alone.Contains);

    private static string Signature(CaseOutcome failure) => Signature(failure, failure.Case.Faults);

    private static string Signature(CaseOutcome failure, IEnumerable<DrawnFault> faults)
    {
        var modes = string.Join(" + ", faults.Select(fault => fault.Instance.Mode.Words).Order(StringComparer.Ordinal));
        return $"{modes}: {What(failure)}";
    }

    private static string What(CaseOutcome failure) => failure.Class switch
    {
        FailureClass.Hazard => HazardWords.Title(failure.Hazards[0].Kind),
        FailureClass.Stuck => "does not flood again",
        FailureClass.Silent => "nobody is told",
        _ => failure.Seen,
    };
}
