using RackController.Model;

namespace RackController.Bench;

/// <summary>Judges that a statement is true throughout.</summary>
internal sealed class AlwaysJudge(Always expectation) : Judge(expectation)
{
    public override void Look(IObserved now, EventLog log)
    {
        if (!expectation.Window.Contains(now.Elapsed) || expectation.While is { } when && when.Judge(now) != Truth.Yes)
        {
            return;
        }

        var truth = expectation.What.Judge(now);
        Judged += truth == Truth.NotNow ? 0 : 1;
        if (truth == Truth.No)
        {
            Fail(new Failure(now.At, now.Elapsed, expectation.What.Seen(now), log.CausesFor(now.Site, expectation.What)));
        }
    }

    protected override string Words(Site site) => Phrase.Of(site, "always", expectation.What, expectation.While);

    protected override string NothingToJudge(Site site) => Phrase.NothingToJudge(site, expectation.While);
}

/// <summary>Judges that a statement is true at no moment.</summary>
internal sealed class NeverJudge(Never expectation) : Judge(expectation)
{
    public override void Look(IObserved now, EventLog log)
    {
        if (!expectation.Window.Contains(now.Elapsed) || expectation.While is { } when && when.Judge(now) != Truth.Yes)
        {
            return;
        }

        var truth = expectation.What.Judge(now);
        Judged += truth == Truth.NotNow ? 0 : 1;
        if (truth == Truth.Yes)
        {
            Fail(new Failure(now.At, now.Elapsed, expectation.What.Seen(now), log.CausesFor(now.Site, expectation.What)));
        }
    }

    protected override string Words(Site site) => Phrase.Of(site, "never", expectation.What, expectation.While);

    protected override string NothingToJudge(Site site) => Phrase.NothingToJudge(site, expectation.While);
}

/// <summary>The wording that judges share.</summary>
internal static class Phrase
{
    public static string Of(Site site, string how, Statement what, Statement? condition) =>
        condition is null ? $"{how}: {what.Words(site)}" : $"{how}, while {condition.Words(site)}: {what.Words(site)}";

    public static string NothingToJudge(Site site, Statement? condition) => condition is null
        ? "there was no moment to judge it at, so nothing is proved"
        : $"it never came about that {condition.Words(site)}, so nothing is proved";
}
