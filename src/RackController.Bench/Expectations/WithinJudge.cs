using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Judges that one statement follows another in time. A run that ends before the time is up leaves the last
/// occasion unjudged.</summary>
internal sealed class WithinJudge(Within expectation) : Judge(expectation)
{
    private readonly Queue<Duration> open = new();
    private Truth before = Truth.No;

    public override void Look(IObserved now, EventLog log)
    {
        var trigger = expectation.Of.Judge(now);
        if (trigger == Truth.Yes && before != Truth.Yes && expectation.Window.Contains(now.Elapsed))
        {
            open.Enqueue(now.Elapsed);
        }

        before = trigger;
        while (open.TryPeek(out var since) && now.IsLongerSince(since, expectation.Limit))
        {
            open.Dequeue();
            Judged++;
            Fail(TooLate(now, since, log));
        }

        if (open.Count > 0 && expectation.Then.Judge(now) == Truth.Yes)
        {
            Judged += open.Count;
            open.Clear();
        }
    }

    protected override string Words(Site site) =>
        $"within {Spans.Words(expectation.Limit)} of {Clause(expectation.Of, site)}: {expectation.Then.Words(site)}";

    protected override string NothingToJudge(Site site) => open.Count > 0
        ? $"the run ended before the {Spans.Words(expectation.Limit)} were over, so nothing is proved"
        : $"it never came about that {expectation.Of.Words(site)}, so nothing is proved";

    private static string Clause(Statement of, Site site) =>
        of is Happens { Name: Happens.Start } ? "the start" : $"the moment that {of.Words(site)}";

    private Failure TooLate(IObserved now, Duration since, EventLog log)
    {
        var deadline = since + expectation.Limit;
        return new Failure(
            now.At - (now.Elapsed - deadline), deadline,
            $"{Spans.Words(expectation.Limit)} after {Clause(expectation.Of, now.Site)} it had not come about; "
                + expectation.Then.Seen(now),
            log.CausesFor(now.Site, expectation.Of, expectation.Then));
    }
}
