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
            facts.SetFlow(load.Id, flow);
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
            isJudged = facts.TakenAt(flowing.Sensor) >= changedAt && !IsContradicted(facts, sees);
            flow = isJudged ? sees.IsFlowing ? Flow.Flows : Flow.Still : Flow.Unknown;
            nextTry = now + Settles;
        }

        if (!isJudged)
        {
            agenda.Add(nextTry);
        }
    }

    // A sensor that is stuck at what it read, or has drifted: its word alone is not enough to take everybody's light and air away.
    private bool IsContradicted(Facts facts, (bool IsTold, bool IsFlowing, bool IsIoOk) sees) =>
        sees.IsFlowing && !sees.IsTold && circuit is not null && circuit.Contradicts(ofCircuit!, facts);

    private void Begin(MonotonicTime now, Duration settles)
    {
        changedAt = now + settles;
        nextTry = changedAt;
        flow = Flow.Unknown;
        isJudged = false;
    }
}
