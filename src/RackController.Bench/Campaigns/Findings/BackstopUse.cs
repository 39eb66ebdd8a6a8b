using System.Collections.Immutable;

namespace RackController.Bench;

/// <summary>A wired part that had to act, and by what.</summary>
/// <param name="Backstop">Which part.</param>
/// <param name="Modes">The modes that struck.</param>
/// <param name="Count">In how many cases it acted.</param>
/// <param name="Prevented">In how many of them nothing else stood between the fault and a hazard; null where the bench cannot take the
/// part away to see.</param>
/// <param name="Example">One of the cases.</param>
/// <param name="Otherwise">What would have happened there without it; empty where nothing worse, or nobody knows.</param>
public sealed record BackstopUse(
    WiredBackstop Backstop, string Modes, int Count, int? Prevented, CaseOutcome Example, string Otherwise)
{
    internal static ImmutableArray<BackstopUse> Of(ImmutableArray<CaseOutcome> outcomes) =>
    [
        .. from outcome in outcomes
           from backstop in outcome.Acted
           group outcome by (backstop, Modes: ModesOf(outcome, backstop)) into use
           let prevented = use.SelectMany(one => one.Prevented).Where(one => one.By == use.Key.backstop).ToList()
           let example = use.FirstOrDefault(one => one.Prevented.Any(each => each.By == use.Key.backstop)) ?? use.First()
           orderby use.Key.backstop, use.Count() descending
           select new BackstopUse(
               use.Key.backstop, use.Key.Modes, use.Count(),
               Prevention.Removable.Contains(use.Key.backstop) ? prevented.Count : null,
               example, prevented.FirstOrDefault()?.Otherwise.Seen ?? ""),
    ];

    // What trips a ground-fault protection is the leakage; what strikes beside it is of no account.
    private static string ModesOf(CaseOutcome outcome, WiredBackstop backstop)
    {
        var leaks = outcome.Case.Faults.Where(fault => fault.Instance.Mode.Kinds.Contains(Plant.FaultKind.EarthLeakage)).ToList();
        var faults = backstop == WiredBackstop.GroundFaultProtection && leaks.Count > 0 ? leaks[..1] : [.. outcome.Case.Faults];
        return string.Join(" + ", faults.Select(fault => fault.Instance.Mode.Words).Order(StringComparer.Ordinal));
    }
}
