using RackController.Model;

namespace RackController.Control;

/// <summary>Tells that a service hold is about to end by itself, while there is still time to take the hands out.</summary>
internal sealed class ServiceHoldEnding(CauseAndEffectRow row, Rack rack) : Interlock(row, Place.Of(rack), [])
{
    private MonotonicTime endsAt;

    public override string Settings => $"{rack.Limits.ServiceHoldWarning.InWords()} before its end";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        if (facts.Desk(rack.Id).HoldEndsAt is not { } end)
        {
            return false;
        }

        endsAt = end;
        var warning = end + -rack.Limits.ServiceHoldWarning;
        if (facts.Now.Monotonic >= warning)
        {
            return true;
        }

        agenda.Add(warning);
        return false;
    }

    public override string Words(ClockFace clock) => $"the service hold ends by itself at {clock.At(endsAt)}";
}
