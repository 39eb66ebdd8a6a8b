using RackController.Model;

namespace RackController.Control;

/// <summary>Tells that a fill by level ran to its time limit without every tray reading full. The flood goes on; the pump's
/// maximum run still ends it.</summary>
internal sealed class FillSlow(CauseAndEffectRow row, Rack rack) : Interlock(row, Place.Of(rack), [])
{
    public override string Settings => rack.Schedule.Floods.Fill.Limit.InWords();

    protected override bool IsPresent(Facts facts, Agenda agenda) => facts.About(rack.Id).FillHitItsLimit;

    public override string Words(ClockFace clock) =>
        $"the last fill took its limit of {rack.Schedule.Floods.Fill.Limit.InWords()} and not every tray reads full";
}
