using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Keeps pump and valves off while hands are in the rack. Hazard: water and a starting pump on whoever cleans a tray. It ends by
/// itself, with a warning first, so that a forgotten hold costs one flood and not the crop. Whoever
/// resumes, resets or ends a hold may have hands in still, so the pump waits a moment after that too.
/// </summary>
internal sealed class ServiceHold(CauseAndEffectRow row, Rack rack, ImmutableArray<LoadId> loads)
    : Interlock(row, Place.Of(rack), loads)
{
    private MonotonicTime? endsAt;
    private MonotonicTime? clearAt;

    public override string Settings =>
        $"at most {rack.Limits.ServiceHoldMaximum.InWords()}; {rack.Limits.StartDelay.InWords()} after somebody let go";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var desk = facts.Desk(rack.Id);
        (endsAt, clearAt) = (desk.HoldEndsAt, desk.ClearAt);
        return desk.MayHaveHandsIn;
    }

    public override string Words(ClockFace clock) =>
        endsAt is { } end ? $"hands are in the rack until {clock.At(end)}"
        : clearAt is { } clear ? $"hands may still be in the rack until {clock.At(clear)}"
        : "hands were in the rack";
}
