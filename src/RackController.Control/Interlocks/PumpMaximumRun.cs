using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Cuts a pump that has run its maximum and keeps it off for its rest time. Hazard: a flood that never ends overwhelms the
/// standpipes, empties the reservoir and burns a pump. Several in a day mean that something else is wrong: it latches.
/// </summary>
internal sealed class PumpMaximumRun : Interlock
{
    private readonly InterlockLimits limits;
    private readonly RecentTrips trips;
    private readonly PumpRun run;
    private bool tripped;

    public PumpMaximumRun(CauseAndEffectRow row, Rack rack, MonotonicTime start)
        : base(row, Place.Of(rack), [rack.Pump.Load])
    {
        limits = rack.Limits;
        trips = new RecentTrips(Key, limits.MaximumRunsToLatch);
        run = new PumpRun(rack.Pump.Load, start);
    }

    public override string Settings =>
        $"{limits.PumpMaximumRun.InWords()}; {limits.MaximumRunsToLatch.Times()} in 24 h latch";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        run.Follow(facts);
        var due = run.Since + (run.IsRunning ? limits.PumpMaximumRun : limits.PumpRest);
        var isDue = facts.Now.Monotonic >= due;
        if (run.IsRunning && isDue && !tripped)
        {
            tripped = true;
            Changed();
            if (trips.AddAndAskWhetherTooMany(facts.Now.Monotonic))
            {
                Latch();
            }
        }
        else if (!run.IsRunning && isDue)
        {
            tripped = false;
        }

        if (run.IsRunning || tripped)
        {
            agenda.Add(due);
        }

        return tripped;
    }

    public override string Words(ClockFace clock) => IsLatched
        ? $"the pump ran its maximum of {limits.PumpMaximumRun.InWords()} {limits.MaximumRunsToLatch.Times()} within 24 h"
        : $"the pump ran its maximum of {limits.PumpMaximumRun.InWords()}";

    protected override void SaveOwn(MemoryWriter memory)
    {
        trips.Save(memory);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        trips.Restore(memory);
    }

    protected override void Forget() => trips.Clear();
}
