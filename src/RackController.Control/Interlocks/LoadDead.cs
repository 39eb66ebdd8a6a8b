using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Tells of a load that was told on and draws no current: burnt out, unplugged, or behind a relay that no longer closes. Hazard: roots
/// without air, a canopy without wind, and nobody who notices before the crop does. It stands until current is seen again, also while
/// the load is switched to be checked.
/// </summary>
internal sealed class LoadDead(CauseAndEffectRow row, Load load) : Interlock(row, Place.Of(load), [])
{
    private bool isDead;

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var flow = facts.FlowOf(load.Id);
        isDead = flow != Flow.Flows && (isDead || (flow == Flow.Still && facts.WasOn(load.Id)));
        return isDead;
    }

    public override string Words(ClockFace clock) => $"{load.Name} was told on and drew no current";
}
