using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Keeps a pump off until its rest time is over. Hazard: a second flood on top of trays that still drain overwhelms the
/// standpipes. After a restart nobody knows when the pump stopped, so the rest begins again.
/// </summary>
internal sealed class PumpRest(CauseAndEffectRow row, Rack rack, MonotonicTime start)
    : Interlock(row, Place.Of(rack), [rack.Pump.Load])
{
    private readonly PumpRun run = new(rack.Pump.Load, start);

    public override string Settings => rack.Limits.PumpRest.InWords();

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        run.Follow(facts);
        if (run.IsRunning)
        {
            return false;
        }

        var over = run.Since + rack.Limits.PumpRest;
        if (facts.Now.Monotonic >= over)
        {
            return false;
        }

        agenda.Add(over);
        return true;
    }

    public override string Words(ClockFace clock) =>
        $"the pump rests until {clock.At(run.Since + rack.Limits.PumpRest)} while the trays drain";
}
