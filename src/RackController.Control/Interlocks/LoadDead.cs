using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Tells of a load that was told on and draws no current: burnt out, unplugged, or behind a relay that no longer closes. Hazard: roots
/// without air, a canopy without wind, and nobody who notices before the crop does. It stands until current is seen again, also while
/// the load is switched to be checked. A fan that nobody wants for a while cannot show that it was repaired: once somebody knows of it,
/// it is told anew when it is switched on and still dead. Whoever keeps it off meanwhile, be it a schedule, an outage or another row: that
/// row speaks for itself, and nothing is tried again for the sake of this one, so an outage brings it back once and no oftener.
/// </summary>
internal sealed class LoadDead(CauseAndEffectRow row, Load load) : Interlock(row, Place.Of(load), [])
{
    // Longer than a check, the rest of a relay and the return of a whole circuit last.
    private static readonly Duration unwanted = Duration.FromMinutes(20);
    private readonly bool returnsAcknowledged = row.Returns.HasFlag(WaysBack.Acknowledgement);
    private MonotonicTime? offSince;
    private bool isDead;
    private bool isAcknowledged;

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var (flow, wasOn) = (facts.FlowOf(load.Id), facts.WasOn(load.Id));
        isDead = flow != Flow.Flows && (isDead || (flow == Flow.Still && wasOn));
        offSince = wasOn ? null : offSince ?? facts.Now.Monotonic;
        if (isDead && isAcknowledged && offSince + unwanted is { } due)
        {
            isDead = facts.Now.Monotonic < due;
            agenda.Add(due);
        }

        isAcknowledged &= isDead;
        return isDead;
    }

    public override void Acknowledged() => isAcknowledged = returnsAcknowledged && isDead;

    public override string Words(ClockFace clock) => $"{load.Name} was told on and drew no current";
}
