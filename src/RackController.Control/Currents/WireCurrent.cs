using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Whether a load draws current, by a sensor in its own wire. It is believed a moment after the load was switched and after the
/// current came or went, and only by a reading that was taken since: before that, the reading may be of what was.
/// </summary>
/// <param name="load">The load.</param>
/// <param name="flowing">The current above which it counts as flowing.</param>
/// <param name="circuit">What the sensor of its circuit tells; null where it has none.</param>
/// <param name="start">The moment of taking charge.</param>
internal sealed class WireCurrent(Load load, Limit flowing, StepCurrents? circuit, MonotonicTime start) : ICurrentJudge
{
    /// <summary>Long enough for a start (half a second, common practice, no source) and for a sensor that is read once a second.</summary>
    public static readonly Duration Settles = Duration.FromSeconds(3);

    // Nameplates state the most that a load may draw, and sensors err by a tenth of that: in the middle both are told apart best.
    private const double FlowingShare = 0.5;

    // While outputs fail a relay may well not be where it was told to be. Long enough for the lines to be claimed again, and shorter than
    // the ten seconds after which a supervisor starts the controller anew, so that a pump is cut before.
    private static readonly Duration failingPatience = Duration.FromSeconds(4);

    private readonly LoadBelief? ofCircuit = circuit?.Of(load);

    // Null while nobody knows.
    private (bool IsTold, bool IsFlowing, bool IsIoOk)? seen;
    private MonotonicTime changedAt = start;
    private MonotonicTime nextTry = start;
    private Flow flow;
    private bool isJudged;

    /// <summary>The current above which it counts as flowing, A.</summary>
    public static double FlowingA(Load load, double voltageV) => FlowingShare * load.CurrentA(voltageV);

    public void Look(Facts facts, Agenda agenda)
    {
        if (facts.IsKnown(flowing.Sensor))
        {
            Follow(facts, agenda);
            facts.SetFlow(load.Id, Weigh(facts));
            return;
        }

        seen = null;
        if (circuit is null)
        {
            // Where there is one, the sensor of the circuit has said what it can.
            facts.SetFlow(load.Id, Flow.Unknown);
        }
    }

    private void Follow(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        var sees = (IsTold: facts.WasOn(load.Id), IsFlowing: facts.IsAbove(flowing), IsIoOk: facts.Conditions.Io.IsOk);
        if (sees != seen)
        {
            seen = sees;
            Begin(now, sees.IsIoOk ? Settles : failingPatience);
        }

        if (!isJudged && now >= nextTry)
        {
            var isOfNow = facts.TakenAt(flowing.Sensor) >= changedAt;
            var isContradicted = isOfNow && sees.IsFlowing && !sees.IsTold && circuit is not null && circuit.Contradicts(ofCircuit!, facts);
            flow = !isOfNow ? Flow.Unknown : isContradicted ? Flow.SeemsToFlow : sees.IsFlowing ? Flow.Flows : Flow.Still;
            isJudged = isOfNow && !isContradicted;
            nextTry = now + Settles;
        }

        if (!isJudged)
        {
            agenda.Add(nextTry);
        }
    }

    // A sensor that is stuck at what it read, or has drifted: where two differ of a load that is told off, neither's word alone is enough,
    // to take everybody's light and air away or to let a pump run on. What the circuit carried while everything was told off decides.
    private Flow Weigh(Facts facts)
    {
        if (flow is Flow.Unknown or Flow.Flows || facts.WasOn(load.Id) || circuit is null || !circuit.Knows(ofCircuit!, facts))
        {
            return flow;
        }

        var doubts = flow == Flow.SeemsToFlow || ofCircuit!.Flow is Flow.Flows or Flow.SeemsToFlow;
        return !doubts ? flow : ofCircuit!.IsSeenAlone ? ofCircuit.Flow : Flow.SeemsToFlow;
    }

    private void Begin(MonotonicTime now, Duration settles)
    {
        changedAt = now + settles;
        nextTry = changedAt;
        flow = Flow.Unknown;
        isJudged = false;
    }
}
