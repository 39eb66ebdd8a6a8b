
namespace RackController.Control;

/// <summary>Tells that schedules run without a trusted wall clock: floods at their spacing from the last known one, lights by
/// the last known photoperiod. It switches nothing by itself.</summary>
internal sealed class ClockUntrusted(CauseAndEffectRow row) : Interlock(row, Place.Controller, [])
{
    protected override bool IsPresent(Facts facts, Agenda agenda) => !facts.Now.WallTrusted;

    public override string Words(ClockFace clock) => "the wall clock is not trusted";
}
