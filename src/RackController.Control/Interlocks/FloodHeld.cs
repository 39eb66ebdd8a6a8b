using RackController.Model;

namespace RackController.Control;

/// <summary>Tells that a flood has been due for a long time and could not begin. Hazard: a rack that is safe because it never
/// floods again, while its crop dries.</summary>
internal sealed class FloodHeld(CauseAndEffectRow row, Rack rack) : Interlock(row, Place.Of(rack), [])
{
    private MonotonicTime since;
    private bool wasWaiting;

    public override string Settings => (rack.Limits.PumpRest * 2).InWords();

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var waiting = facts.About(rack.Id).IsFloodWaiting;
        if (waiting && !wasWaiting)
        {
            since = facts.Now.Monotonic;
        }

        wasWaiting = waiting;
        if (!waiting)
        {
            return false;
        }

        // One rest is the ordinary wait; a second one means that something else is in the way.
        var due = since + rack.Limits.PumpRest * 2;
        if (facts.Now.Monotonic >= due)
        {
            return true;
        }

        agenda.Add(due);
        return false;
    }

    public override string Words(ClockFace clock) => $"a flood has waited since {clock.At(since)}";
}
