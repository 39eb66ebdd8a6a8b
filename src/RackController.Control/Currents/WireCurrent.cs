using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Whether a load draws current, by a sensor in its own wire. It is believed a moment after the load was switched and after the
/// current came or went, and only by a reading that was taken since: before that, the reading may be of what was.
/// </summary>
internal sealed class WireCurrent(Load load, Limit flowing, MonotonicTime start) : ICurrentJudge
{
    /// <summary>Long enough for a start (half a second, common practice, no source) and for a sensor that is read once a second.</summary>
    public static readonly Duration Settles = Duration.FromSeconds(3);

    // What of its nameplate a load draws at least while it works, and an idle wire surely does not: common practice, no source.
    private const double FlowingShare = 0.3;

    // While outputs fail a relay may well not be where it was told to be; for long, and something has to be done about it.
    private static readonly Duration failingPatience = Duration.FromMinutes(1);

    private (bool IsTold, bool IsFlowing, bool IsIoOk) seen;
    private MonotonicTime changedAt = start;
    private MonotonicTime nextTry = start;
    private Flow flow;
    private bool isJudged;

    /// <summary>The current above which it counts as flowing, A.</summary>
    public static double FlowingA(Load load, double voltageV) => FlowingShare * load.CurrentA(voltageV);

    public void Look(Facts facts, Agenda agenda) => facts.SetFlow(load.Id, Follow(facts, agenda));

    private Flow Follow(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        if (!facts.IsKnown(flowing.Sensor))
        {
            Begin(now, Duration.Zero);
            return flow;
        }

        var sees = (facts.WasOn(load.Id), facts.IsAbove(flowing), facts.Conditions.Io.IsOk);
        if (sees != seen)
        {
            seen = sees;
            Begin(now, seen.IsIoOk ? Settles : failingPatience);
        }

        if (isJudged)
        {
            return flow;
        }

        if (now >= nextTry)
        {
            isJudged = facts.TakenAt(flowing.Sensor) >= changedAt;
            flow = isJudged ? seen.IsFlowing ? Flow.Flows : Flow.Still : Flow.Unknown;
            nextTry = now + Settles;
        }

        if (!isJudged)
        {
            agenda.Add(nextTry);
        }

        return flow;
    }

    private void Begin(MonotonicTime now, Duration settles)
    {
        changedAt = now + settles;
        nextTry = changedAt;
        flow = Flow.Unknown;
        isJudged = false;
    }
}
