using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Switches an aerator, fan or light off for a moment, to see the current of its circuit fall and rise again: whenever that current seems
/// to say that it has stopped, and an aerator or fan now and then. What never switches is otherwise never known to be alive, and a few
/// watts do not show among lights. Hazard: a dead aerator that nobody notices.
/// <para>It lasts as long as the relay must rest, and the checks of a circuit stay further apart than that, so that never two loads are
/// out for one. While hands are in a rack on the circuit it waits: a fan that starts by itself surprises.</para>
/// </summary>
internal sealed class LoadCheck : Interlock
{
    // Longer than a current takes to settle and a slow sensor to be read.
    private static readonly Duration lasts = Duration.FromSeconds(8);
    private static readonly Duration comesBack = Duration.FromSeconds(30);
    private static readonly Duration inDoubt = Duration.FromMinutes(10);
    private readonly CircuitLimits limits;
    private readonly Load load;
    private readonly SensorId sensor;
    private readonly Duration apart;
    private readonly Duration turn;
    private readonly bool isRegular;
    private MonotonicTime? onSince;
    private MonotonicTime? doubtedSince;
    private MonotonicTime? until;
    private bool wasChecked;
    private bool isBackFromCheck;

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
        this.load = load;
        this.sensor = sensor;
        apart = Duration.Max(lasts, limits.RelayRest) + comesBack;
        this.turn = apart * turn;
        isRegular = load.Kind is LoadKind.Aerator or LoadKind.Fan;
    }

    public override string Settings => $"every {limits.LoadCheckEvery.InWords()}";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        Follow(facts);
        until = now < until ? until : null;
        if (until is null && onSince is { } since && facts.Conditions.Io.IsOk && facts.IsKnown(sensor)
            && !facts.MayHaveHandsIn(load.Circuit, agenda))
        {
            var due = Due(facts, since);
            if (now < due)
            {
                agenda.Add(due);
                return false;
            }

            (until, wasChecked, doubtedSince) = (now + lasts, true, null);
        }

        agenda.Add(until ?? MonotonicTime.Never);
        return until is not null;
    }

    public override string Words(ClockFace clock) => "it is off for a moment, to see by the current whether it is alive";

    private MonotonicTime Due(Facts facts, MonotonicTime since)
    {
        var flow = facts.FlowOf(load.Id);
        if (flow == Flow.SeemsStill || (isRegular && flow == Flow.Unknown && !wasChecked))
        {
            // All loads that draw about as much are in doubt at once.
            doubtedSince ??= facts.Now.Monotonic;
            var (borne, seen) = (since + inDoubt, doubtedSince.Value + apart);
            return (borne > seen ? borne : seen) + turn;
        }

        doubtedSince = null;

        // Who is back from his check has had his turn, and keeps it.
        return isRegular ? since + limits.LoadCheckEvery + (isBackFromCheck ? Duration.Zero : turn) : MonotonicTime.Never;
    }

    private void Follow(Facts facts)
    {
        var isOn = facts.WasOn(load.Id);
        if (isOn != onSince is not null)
        {
            onSince = isOn ? facts.Now.Monotonic : null;
            doubtedSince = null;
            isBackFromCheck = isOn ? isBackFromCheck : until is not null && isRegular;
        }
    }
}
