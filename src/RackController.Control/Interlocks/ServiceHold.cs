using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Keeps pump and valves off while hands are in the rack. Hazard: water and a starting pump on whoever cleans a tray. It ends by
/// itself, with a warning first, so that a forgotten hold costs one flood and not the crop.
/// </summary>
internal sealed class ServiceHold(CauseAndEffectRow row, Rack rack, ImmutableArray<LoadId> loads)
    : Interlock(row, Place.Of(rack), loads)
{
    private MonotonicTime? endsAt;

    public override string Settings => $"at most {rack.Limits.ServiceHoldMaximum.InWords()}";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        endsAt = facts.Desk(rack.Id).HoldEndsAt;
        return endsAt is not null;
    }

    public override string Words(ClockFace clock) =>
        endsAt is { } end ? $"hands are in the rack until {clock.At(end)}" : "hands were in the rack";
}
