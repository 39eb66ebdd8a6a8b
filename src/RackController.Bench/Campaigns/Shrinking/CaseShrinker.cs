using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>
/// Makes a failed case as small and plain as it can be and still fail in the same way: fewer faults, rounder moments, shorter lengths,
/// plainer sizes, a later start. Greedy and without chance, so that a failure always shrinks to the same case.
/// </summary>
internal sealed class CaseShrinker
{
    private const int MostRuns = 80;

    private static readonly ImmutableArray<Duration> plainLengths =
    [
        .. new[] { 1, 2, 5, 10, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14_400, 28_800 }
            .Select(seconds => Duration.FromSeconds(seconds)),
    ];

    private static readonly ImmutableArray<Duration> roundings =
    [
        Duration.FromMinutes(10), Duration.FromMinutes(1), Duration.FromSeconds(10), Duration.FromSeconds(1),
        Duration.FromMilliseconds(100),
    ];

    private static readonly ImmutableArray<Duration> leads =
        [Duration.FromMinutes(1), Duration.FromMinutes(5), Duration.FromMinutes(15), Duration.FromMinutes(20)];

    private readonly Site site;
    private readonly FaultFreeDays days;
    private CaseOutcome best;
    private int runs;

    private CaseShrinker(Site site, FaultFreeDays days, CaseOutcome failed)
    {
        this.site = site;
        this.days = days;
        best = failed;
    }

    /// <summary>Shrinks a failure.</summary>
    /// <param name="site">The site.</param>
    /// <param name="days">What it does when nothing fails.</param>
    /// <param name="failed">The outcome of the failed case.</param>
    public static CaseOutcome Shrink(Site site, FaultFreeDays days, CaseOutcome failed)
    {
        var shrinker = new CaseShrinker(site, days, failed);
        shrinker.DropFaults();
        shrinker.Try(shrinker.best.Case with { Breakers = BreakerEdge.Fast });
        shrinker.Plainer();
        shrinker.StartLater();
        return shrinker.best;
    }

    /// <summary>Whether one outcome is a failure of the same sort as another.</summary>
    public static bool IsSame(CaseOutcome one, CaseOutcome other) =>
        one.Class == other.Class && one.WentShort == other.WentShort
        && one.Hazards.FirstOrDefault()?.Kind == other.Hazards.FirstOrDefault()?.Kind;

    private bool Try(CampaignCase smaller)
    {
        if (smaller == best.Case || ++runs > MostRuns)
        {
            return false;
        }

        var outcome = CaseRun.Run(site, days, smaller);
        if (!IsSame(outcome, best))
        {
            return false;
        }

        best = outcome;
        return true;
    }

    private void DropFaults()
    {
        for (var index = best.Case.Faults.Length - 1; index >= 0 && best.Case.Faults.Length > 1; index--)
        {
            Try(best.Case with { Faults = best.Case.Faults.RemoveAt(index) });
        }
    }

    private void Plainer()
    {
        for (var index = 0; index < best.Case.Faults.Length; index++)
        {
            PlainSize(index);
            ShortLength(index);
            RoundMoment(index);
        }
    }

    private void PlainSize(int index)
    {
        if (best.Case.Faults[index].Instance.Mode.Sizes is { } sizes && !Try(With(index, fault => fault with { Size = sizes.Plain })))
        {
            Try(With(index, fault => fault with { Size = sizes.Most }));
        }
    }

    private void ShortLength(int index)
    {
        var mode = best.Case.Faults[index].Instance.Mode;
        var longest = best.Case.Faults[index].Lasts;
        var shorter = plainLengths.Where(length => length >= mode.ShortestLasts && length < longest);
        _ = shorter.Any(length => Try(With(index, fault => fault with { Lasts = length })));
    }

    // The second fault first tries to strike together with the first.
    private void RoundMoment(int index)
    {
        if (index > 0 && Try(With(index, fault => fault with { At = best.Case.Faults[0].At })))
        {
            return;
        }

        _ = roundings.Any(step => Try(With(index, fault => fault with { At = Rounded(fault.At, step) })));
    }

    private void StartLater()
    {
        foreach (var lead in leads)
        {
            var earliest = best.Case.Faults.Min(fault => fault.At);
            var minutes = Math.Floor((earliest - lead).TotalMinutes);
            if (minutes > 0 && Try(Later(best.Case, Duration.FromMinutes(minutes))))
            {
                return;
            }
        }
    }

    private static CampaignCase Later(CampaignCase drawn, Duration by) => drawn with
    {
        Start = drawn.Start + by,
        Faults = [.. drawn.Faults.Select(fault => fault with { Start = drawn.Start + by, At = fault.At - by })],
    };

    private CampaignCase With(int index, Func<DrawnFault, DrawnFault> change) =>
        best.Case with { Faults = best.Case.Faults.SetItem(index, change(best.Case.Faults[index])) };

    private static Duration Rounded(Duration time, Duration step) => step * Math.Round(time / step);
}
