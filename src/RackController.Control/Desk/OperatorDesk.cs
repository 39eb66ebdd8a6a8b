using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Takes what people ask for and says what becomes of it. Every request gets exactly one answer, as an event. Nothing here
/// can switch a relay: a request changes a wish, an alarm or a latch whose cause is gone.
/// </summary>
internal sealed class OperatorDesk(
    Site site, ImmutableArray<RackDesk> desks, ImmutableArray<RackDemand> demands, AlarmPanel alarms, LatchDesk latches,
    ProofTestDesk proofTests)
{
    /// <summary>Takes one request.</summary>
    public void Take(OperatorRequest request, in Moment now, IEventSink events)
    {
        var (subject, answer) = Answer(request, now, events);
        events.Take(new ControlEvent(now, EventKind.Request, subject, answer, $"{request.By} asked"));
    }

    private (string Subject, string Answer) Answer(OperatorRequest request, in Moment now, IEventSink events) => request switch
    {
        FloodNow ask => At(ask.Rack, $"flood now: {FloodNow(ask.Rack, now, events)}"),
        SkipNextFlood ask => At(ask.Rack, $"skip the next flood: {SkipNext(ask.Rack, now, events)}"),
        SetTierInUse ask => At(ask.Rack, SetTier(ask)),
        Stop ask => SetStopped(ask.Rack, stopped: true, "stopped: every load takes its safe state until somebody resumes"),
        Resume ask => Resume(ask.Rack, now.Monotonic),
        HoldForService ask => At(ask.Rack, Hold(ask, now)),
        EndServiceHold ask => At(ask.Rack, EndHold(ask.Rack, now.Monotonic)),
        Acknowledge ask => (ask.Alarm, $"acknowledge: {alarms.Acknowledge(ask.Alarm, ask.By, now, events)}"),
        Shelve ask => (ask.Alarm, $"shelve: {alarms.Shelve(ask.Alarm, ask.Length, ask.By, now, events)}"),
        Unshelve ask => (ask.Alarm, $"unshelve: {alarms.Unshelve(ask.Alarm, ask.By, now, events)}"),
        SetAlarmOutOfService ask => (ask.Alarm, alarms.SetOutOfService(ask.Alarm, ask.OutOfService, ask.By, now, events)),
        ResetLatch ask => (ask.Latch, $"reset: {latches.Ask(ask.Latch, now.Monotonic)}"),
        ConfirmReset ask => (ask.Latch, $"confirm reset: {Confirm(ask.Latch, now)}"),
        BeginProofTest ask => (ask.Item, $"proof test: {proofTests.Begin(ask.Item, ask.By, now, events)}"),
        AnswerProofTest ask => (site.Name, $"proof test: {proofTests.Answer(ask.AsExpected)}"),
        AbandonProofTest ask => (site.Name, $"proof test: {proofTests.Abandon(ask.By, now, events)}"),
        _ => throw new InvariantBrokenException($"the desk knows no request {request.GetType().Name}"),
    };

    private (string Subject, string Answer) At(RackId rack, string answer) => (site[rack].Name, answer);

    private (string Subject, string Answer) SetStopped(RackId? rack, bool stopped, string answer)
    {
        foreach (var each in site.Racks)
        {
            if (rack is null || rack == each.Id)
            {
                desks[each.Id.Index].SetStopped(stopped);
            }
        }

        return (rack is { } one ? site[one].Name : site.Name, answer);
    }

    private (string Subject, string Answer) Resume(RackId? rack, MonotonicTime now)
    {
        foreach (var each in site.Racks)
        {
            if ((rack is null || rack == each.Id) && desks[each.Id.Index].IsStopped)
            {
                desks[each.Id.Index].LetGo(now);
            }
        }

        return SetStopped(rack, stopped: false, "resumed: the schedule is followed again");
    }

    private string EndHold(RackId rack, MonotonicTime now)
    {
        if (!desks[rack.Index].EndHold())
        {
            return "there was no service hold";
        }

        desks[rack.Index].LetGo(now);
        return $"service hold ended; the pump may start in {site[rack].Limits.StartDelay.InWords()}";
    }

    private string Confirm(string key, in Moment now)
    {
        var answer = latches.Confirm(key, now, out var released);
        foreach (var rack in released)
        {
            desks[rack.Index].LetGo(now.Monotonic);
        }

        return answer;
    }

    private string FloodNow(RackId rack, in Moment now, IEventSink events)
    {
        if (desks[rack.Index].IsStopped)
        {
            // A flood that waited would begin the moment that somebody else resumes.
            return $"{site[rack].Name} is stopped; resume it first";
        }

        demands[rack.Index].TryFloodNow(now, events, out var answer);
        return answer;
    }

    private string SkipNext(RackId rack, in Moment now, IEventSink events)
    {
        demands[rack.Index].TrySkipNext(now, events, out var answer);
        return answer;
    }

    private string SetTier(SetTierInUse ask)
    {
        demands[ask.Rack.Index].TrySetTierInUse(ask.TierNumber, ask.InUse, out var answer);
        return answer;
    }

    private string Hold(HoldForService ask, in Moment now)
    {
        var given = desks[ask.Rack.Index].BeginHold(now.Monotonic, ask.Length);
        return given < ask.Length
            ? $"service hold for {given.InWords()}, the longest that this rack allows"
            : $"service hold for {given.InWords()}";
    }
}
