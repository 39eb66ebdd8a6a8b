using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Switches an aerator, fan or light off for a moment, to see the current of its circuit fall and rise again: whenever that current seems
/// to say that it has stopped, and an aerator or fan now and then. What never switches is otherwise never known to be alive, and a few
/// watts do not show among lights. Hazard: a dead aerator that nobody notices.
/// </summary>
internal sealed class LoadCheck : Interlock
{
    // Longer than a current takes to settle and a slow sensor to be read.
    private static readonly Duration lasts = Duration.FromSeconds(8);
    private static readonly Duration apart = Duration.FromSeconds(38);
    private static readonly Duration inDoubt = Duration.FromMinutes(10);
    private readonly CircuitLimits limits;
    private readonly SensorId sensor;
    private readonly Duration turn;
    private readonly bool isRegular;
    private MonotonicTime switchedAt;
    private MonotonicTime? doubtedSince;
    private MonotonicTime until;
    private bool isTold;
    private bool isChecking;
    private bool wasChecked;

    /// <summary>Makes the check of one load.</summary>
    /// <param name="row">The row.</param>
    /// <param name="at">Its site.</param>
    /// <param name="load">The load.</param>
    /// <param name="sensor">The sensor of its circuit.</param>
    /// <param name="turn">Which of the checks on its circuit it is, from 0; they come one after the other.</param>
    public LoadCheck(CauseAndEffectRow row, InterlockSite at, Load load, SensorId sensor, int turn)
        : base(row, Place.Of(load), [load.Id])
    {
        limits = CircuitLimits.Of(at.Site, load.Circuit);
        this.sensor = sensor;
        this.turn = apart * turn;
        isRegular = load.Kind is LoadKind.Aerator or LoadKind.Fan;
        switchedAt = at.Start;
    }

    public override string Settings => $"every {limits.LoadCheckEvery.InWords()}";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        Follow(facts);
        isChecking &= now < until;
        if (!isChecking && isTold && facts.Conditions.Io.IsOk && facts.IsKnown(sensor))
        {
            var due = Due(facts);
            if (now < due)
            {
                agenda.Add(due);
                return false;
            }

            (isChecking, wasChecked, doubtedSince) = (true, true, null);
            until = now + lasts;
        }

        if (isChecking)
        {
            agenda.Add(until);
        }

        return isChecking;
    }

    public override string Words(ClockFace clock) => "it is off for a moment, to see by the current whether it is alive";

    private MonotonicTime Due(Facts facts)
    {
        var flow = facts.FlowOf(Loads[0]);
        if (flow == Flow.SeemsStill || (isRegular && flow == Flow.Unknown && !wasChecked))
        {
            // All loads that draw about as much are in doubt at once.
            doubtedSince ??= facts.Now.Monotonic;
            var (borne, seen) = (switchedAt + inDoubt, doubtedSince.Value + apart);
            return (borne > seen ? borne : seen) + turn;
        }

        doubtedSince = null;
        return isRegular ? switchedAt + limits.LoadCheckEvery + turn : MonotonicTime.Never;
    }

    private void Follow(Facts facts)
    {
        var now = facts.Now.Monotonic;
        if (facts.WasOn(Loads[0]) != isTold)
        {
            isTold = !isTold;
            switchedAt = now;
        }
    }
}
