using RackController.Model;

namespace RackController.Bench;

/// <summary>Watches a run on behalf of one expectation and remembers the first moment that goes against it.</summary>
internal abstract class Judge(Expectation expectation)
{
    /// <summary>At how many moments there was something to judge.</summary>
    protected int Judged { get; set; }

    protected Failure? FirstFailure { get; private set; }

    /// <summary>Looks at one moment.</summary>
    public abstract void Look(IObserved now, EventLog log);

    /// <summary>The verdict once the run is over. An expectation that there was nothing to judge for proves nothing, and is
    /// not met.</summary>
    public Verdict Close(IObserved end)
    {
        if (FirstFailure is null && Judged == 0)
        {
            FirstFailure = new Failure(end.At, end.Elapsed, NothingToJudge(end.Site), []);
        }

        return new Verdict(expectation, Words(end.Site), Judged, FirstFailure);
    }

    public static Judge For(Expectation expectation) => expectation switch
    {
        Always always => new ThroughoutJudge(always, "always", Truth.No, always.What, always.While),
        Never never => new ThroughoutJudge(never, "never", Truth.Yes, never.What, never.While),
        Within within => new WithinJudge(within),
        Recovers recovers => new RecoveryJudge(recovers),
        _ => throw new InvariantBrokenException("every kind of expectation has its judge"),
    };

    protected abstract string Words(Site site);

    protected abstract string NothingToJudge(Site site);

    protected void Fail(Failure failure) => FirstFailure ??= failure;
}
