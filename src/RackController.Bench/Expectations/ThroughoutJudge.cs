using RackController.Model;

namespace RackController.Bench;

/// <summary>Judges that a statement is true at every moment of its window, or false at every one.</summary>
/// <param name="expectation">The expectation that is judged.</param>
/// <param name="how">Its word in a scenario: <c>always</c> or <c>never</c>.</param>
/// <param name="breach">What the statement must be at no moment.</param>
/// <param name="what">The statement.</param>
/// <param name="condition">Judged only while this is true; null for always.</param>
internal sealed class ThroughoutJudge(Expectation expectation, string how, Truth breach, Statement what, Statement? condition)
    : Judge(expectation)
{
    private readonly Window window = expectation.Window;

    public override void Look(IObserved now, EventLog log)
    {
        if (now.Elapsed < window.From)
        {
            now.LookAgainBy(window.From);
        }

        if (!window.Contains(now.Elapsed) || (condition is not null && condition.Judge(now) != Truth.Yes))
        {
            return;
        }

        var truth = what.Judge(now);
        Judged += truth == Truth.NotNow ? 0 : 1;
        if (truth == breach)
        {
            Fail(new Failure(now.At, now.Elapsed, what.Seen(now), log.CausesFor(now.Site, what)));
        }
    }

    protected override string Words(Site site) => condition is null
        ? $"{how}: {what.Words(site)}"
        : $"{how}, while {condition.Words(site)}: {what.Words(site)}";

    protected override string NothingToJudge(Site site) => condition is null
        ? "there was no moment to judge it at, so nothing is proved"
        : $"it never came about that {condition.Words(site)}, so nothing is proved";
}
