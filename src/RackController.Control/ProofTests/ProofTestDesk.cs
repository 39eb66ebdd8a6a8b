using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Leads a person through a proof test, one at a time on a site, step by step: what the readings must show, or what the person says was
/// seen, before the time of the step is over. Where readings do not come to show it, or somebody saw otherwise, the test has failed;
/// where nobody answered or the rack never was as the step needs it, nothing was tested. What acts in a test acts as always and
/// comes back as always: the test only looks on, and what it wants of loads is a wish that any interlock may refuse.
/// </summary>
internal sealed class ProofTestDesk(ProofTestLog log, Areas areas, ImmutableArray<Interlock> interlocks)
{
    /// <summary>How long the readings must show what they must, so that a contact that chatters is not taken for one that is
    /// well.</summary>
    public static readonly Duration Hold = Duration.FromSeconds(3);

    private ImmutableArray<Interlock> protectors = [];
    private string by = "";
    private int step;
    private MonotonicTime waitsSince;
    private MonotonicTime? readySince;
    private MonotonicTime? shownSince;
    private bool? answer;
    private bool tells;

    /// <summary>Begins a test.</summary>
    public string Begin(string name, string person, in Moment now, IEventSink events)
    {
        if (log.UnderWay is { } other)
        {
            return $"that of {other.Name} is under way; see it through or abandon it first";
        }

        if (log.Find(name) is not { } item)
        {
            return $"{name} has none";
        }

        log.UnderWay = item;
        by = person;
        protectors = [.. interlocks.Where(interlock => item.Contact is { } contact && interlock.ActsOn(contact))];
        Enter(0, now, events);
        return "begun";
    }

    /// <summary>Takes what a person saw.</summary>
    public string Answer(bool asExpected)
    {
        if (log.UnderWay is not { } item)
        {
            return "no proof test is under way";
        }

        if (item.Steps[step].Shows is not null || readySince is null)
        {
            return $"that of {item.Name} asks nothing now";
        }

        answer = asExpected;
        return asExpected ? "it was so" : "it was not so";
    }

    /// <summary>Ends the test that is under way; nothing was tested.</summary>
    public string Abandon(string person, in Moment now, IEventSink events)
    {
        if (log.UnderWay is not { } item)
        {
            return "no proof test is under way";
        }

        End(item, "abandoned", $"{person} ended it", now, events);
        return $"that of {item.Name} is abandoned";
    }

    /// <summary>How a load is told while the test lasts; what the schedule would like where that is nothing to the test.</summary>
    public Demand Wish(Load load, in Demand demand) =>
        tells && log.UnderWay?.Steps[step].StateOf(load.Id) is { } state
            ? new Demand(state, DemandCause.ProofTest, default)
            : demand;

    /// <summary>Looks whether the test moves on, after the interlocks have looked.</summary>
    public void Look(Attention attention, Facts facts, IEventSink events)
    {
        if (log.JustPassed is { } passed && attention.Called.Contains(areas.At(passed.Place)))
        {
            log.JustPassed = null;
        }

        if (log.UnderWay is { } item && areas.At(item.Place) is var area && attention.Called.Contains(area))
        {
            facts.AskedBy(area);
            Look(item, facts, area.Agenda, events);
            tells = item.Steps[step].HasItsPumps(facts);
        }
    }

    /// <summary>How the test that is under way goes, as of the last scan; null while none is.</summary>
    public ProofTestProgress? Progress(MonotonicTime now) => log.UnderWay is { } item
        ? new ProofTestProgress(
            item.Name, step + 1, item.Steps.Length, item.Steps[step].Words, item.Steps[step].Shows is null, readySince is null,
            Over(item) - now)
        : null;

    private void Look(ProofTestItem item, Facts facts, Agenda agenda, IEventSink events)
    {
        var now = facts.Now.Monotonic;
        var here = item.Steps[step];
        readySince = here.IsReady(facts) ? readySince ?? now : null;
        shownSince = readySince is not null && IsShown(here, facts) ? shownSince ?? now : null;
        var isRefuted = readySince is not null && answer == false;
        answer = null;
        if (isRefuted)
        {
            Fail(item, $"{by} saw otherwise", facts.Now, events);
        }
        else if (shownSince is { } since && now >= since + (here.Shows is null ? Duration.Zero : Hold))
        {
            MoveOn(item, facts.Now, events);
        }
        else if (now >= Over(item))
        {
            TimeIsOver(item, here, facts.Now, events);
        }
        else
        {
            agenda.Add(MonotonicTime.Earlier(Over(item), shownSince + Hold ?? MonotonicTime.Never));
            return;
        }

        agenda.Add(now);
    }

    private bool IsShown(ProofTestStep here, Facts facts)
    {
        if (here.Shows is not { } shows)
        {
            return answer == true;
        }

        return shows(facts) && !(here.MustTrip && protectors.Any(protector => !protector.IsAlarming));
    }

    private MonotonicTime Over(ProofTestItem item) => readySince + item.Pace.Step ?? waitsSince + item.Pace.Wait;

    private void MoveOn(ProofTestItem item, in Moment now, IEventSink events)
    {
        if (step + 1 < item.Steps.Length)
        {
            Enter(step + 1, now, events);
            return;
        }

        log.Pass(now.Monotonic);
        End(item, "passed", $"{by} saw it through", now, events);
    }

    private void TimeIsOver(ProofTestItem item, ProofTestStep here, in Moment now, IEventSink events)
    {
        if (readySince is null)
        {
            End(item, "abandoned", "the rack was not as the test needs it", now, events);
        }
        else if (here.Shows is null)
        {
            End(item, "abandoned", "nobody said what was seen", now, events);
        }
        else
        {
            Fail(item, $"within {item.Pace.Step.InWords()} this was not to be seen: {here.Words}", now, events);
        }
    }

    private void Fail(ProofTestItem item, string because, in Moment now, IEventSink events)
    {
        log.Fail();
        End(item, "failed", because, now, events);
    }

    private void Enter(int next, in Moment now, IEventSink events)
    {
        var item = log.UnderWay!;
        (step, waitsSince, readySince, shownSince, answer) = (next, now.Monotonic, null, null, null);
        Tell(item, $"step {step + 1} of {item.Steps.Length}: {item.Steps[step].Words}", $"{by} tests it", now, events);
    }

    private void End(ProofTestItem item, string what, string because, in Moment now, IEventSink events)
    {
        log.UnderWay = null;
        Tell(item, what, because, now, events);
    }

    private static void Tell(ProofTestItem item, string what, string because, in Moment now, IEventSink events) =>
        events.Take(new ControlEvent(now, EventKind.ProofTest, item.Name, what, because));
}
