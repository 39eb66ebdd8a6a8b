using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Cuts a pump of which no water is seen to come: no flow, no fall in the reservoir, no rise in a tray. Hazard: a pump that runs dry,
/// clogged or air-bound burns, and its crop dries meanwhile. One more flood is tried, since a bubble or a leaf may have gone; if
/// that is not seen either, somebody must look. A fill that was seen to its end begins the count anew, and a sensor that nobody can
/// believe counts for nothing.
/// </summary>
internal sealed class NoFill : Interlock
{
    private readonly Rack rack;
    private readonly PumpRun run;
    private FillSight lastSight;
    private int trips;
    private bool tripped;

    public NoFill(CauseAndEffectRow row, Rack rack, MonotonicTime start)
        : base(row, Place.Of(rack), [rack.Pump.Load])
    {
        this.rack = rack;
        run = new PumpRun(rack.Pump.Load, start);
    }

    public override string Settings =>
        $"seen within {rack.Limits.NoFillWithin.InWords()}; {rack.Limits.NoFillTripsToLatch.Times()} in a row latch";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        run.Follow(facts);
        var (before, sight) = (lastSight, facts.About(rack.Id).Fill);
        lastSight = sight;
        if (sight == FillSight.NotSeen && before != FillSight.NotSeen)
        {
            Trip();
        }
        else if (sight == FillSight.Seen && !run.IsRunning)
        {
            Forget();
        }

        if (tripped && !run.IsRunning)
        {
            // What is latched may be reset as soon as the pump stands.
            var over = run.Since + rack.Limits.PumpRest;
            tripped = !IsLatched && facts.Now.Monotonic < over;
            agenda.Add(over);
        }

        return tripped;
    }

    public override string Words(ClockFace clock) => IsLatched
        ? $"no water was seen to move within {rack.Limits.NoFillWithin.InWords()} of pumping, {trips.Times()} in a row"
        : $"no water was seen to move within {rack.Limits.NoFillWithin.InWords()} of pumping";

    protected override void SaveOwn(MemoryWriter memory)
    {
        memory.Put($"{Key}/trips in a row", trips);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        trips = (int)(memory.Number($"{Key}/trips in a row") ?? 0);
    }

    protected override void Forget()
    {
        if (trips != 0)
        {
            trips = 0;
            Changed();
        }
    }

    private void Trip()
    {
        tripped = true;
        trips++;
        Changed();
        if (trips >= rack.Limits.NoFillTripsToLatch)
        {
            Latch();
        }
    }
}
