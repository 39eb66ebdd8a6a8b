using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Judges that a site is well again within a time. A run that ends before the time is up leaves the occasion
/// unjudged.</summary>
internal sealed class RecoveryJudge(Recovers expectation) : Judge(expectation)
{
    private CropDuties? given;
    private Recovery? recovery;
    private Duration? since;
    private Instant brokenUntil;
    private Truth before = Truth.No;

    public override void Look(IObserved now, EventLog log)
    {
        given ??= new CropDuties(now.Site);
        recovery ??= new Recovery(now.Site, given, IsOwed);
        given.Look(now);
        // What happens anew starts the time anew.
        var trigger = expectation.Of.Judge(now);
        if (trigger == Truth.Yes && before != Truth.Yes && expectation.Window.Contains(now.Elapsed))
        {
            (since, brokenUntil) = (now.Elapsed, now.At);
        }

        before = trigger;
        if (since is not { } begun)
        {
            return;
        }

        if (now.IsLongerSince(begun, expectation.Limit))
        {
            Judged++;
            Fail(TooLate(now, begun, log));
            since = null;
        }
        else if (recovery.IsWell(now, brokenUntil))
        {
            Judged++;
            since = null;
        }
    }

    protected override string Words(Site site) =>
        $"within {Spans.Words(expectation.Limit)} of the moment that {expectation.Of.Words(site)}: {Recovery.Words}";

    protected override string NothingToJudge(Site site) => since is not null
        ? $"the run ended before the {Spans.Words(expectation.Limit)} were over, so nothing is proved"
        : $"it never came about that {expectation.Of.Words(site)}, so nothing is proved";

    private static bool IsOwed(Rack rack, Tier tier) => tier.InUse && !rack.Schedule.Starts().IsEmpty;

    private Failure TooLate(IObserved now, Duration begun, EventLog log)
    {
        var any = new AlarmIs(AlarmIs.Any, null);
        return new Failure(
            now.At - (now.Elapsed - begun - expectation.Limit), begun + expectation.Limit,
            $"{Spans.Words(expectation.Limit)} after {expectation.Of.Words(now.Site)}: "
                + recovery!.Missing(now, brokenUntil, now.Alarm(AlarmIs.Any) == AlarmState.Normal ? [] : ["an alarm"]),
            log.CausesFor(now.Site, expectation.Of, any));
    }
}
