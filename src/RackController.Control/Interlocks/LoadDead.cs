using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Tells of a load that was told on and draws no current: burnt out, unplugged, or behind a relay that no longer closes. Hazard: roots
/// without air, a canopy without wind, and nobody who notices before the crop does.
/// </summary>
/// <param name="row">The row.</param>
/// <param name="load">The load.</param>
internal sealed class LoadDead(CauseAndEffectRow row, Load load) : Interlock(row, Place.Of(load), [])
{
    protected override bool IsPresent(Facts facts, Agenda agenda) =>
        facts.FlowOf(load.Id) == Flow.Still && facts.WasOn(load.Id);

    public override string Words(ClockFace clock) => $"{load.Name} is told on and draws no current";
}
