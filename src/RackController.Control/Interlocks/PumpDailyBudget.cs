using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Keeps a pump off once all its runs together have used the day's budget. Hazard: many short floods, each within its own
/// limit, that together empty the reservoir or wear out the pump. A day is 24 h of monotonic time from the first run, so
/// that no step of the wall clock can begin a new one.
/// </summary>
internal sealed class PumpDailyBudget : Interlock
{
    private static readonly Duration day = Duration.FromHours(24);
    private readonly PumpRun run;
    private readonly Duration budget;
    private Duration used;
    private MonotonicTime countedUpTo;
    private MonotonicTime dayBegan;

    public PumpDailyBudget(CauseAndEffectRow row, Rack rack, MonotonicTime start)
        : base(row, Place.Of(rack), [rack.Pump.Load])
    {
        run = new PumpRun(rack.Pump.Load, start);
        budget = rack.Limits.PumpDailyBudget;
        dayBegan = start;
    }

    public override string Settings => $"{budget.InWords()} in 24 h";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        Count(facts);
        if (used > Duration.Zero && facts.Now.Monotonic >= dayBegan + day)
        {
            used = Duration.Zero;
            dayBegan = facts.Now.Monotonic;
            Changed();
        }

        NameDueTimes(facts, agenda);
        return used >= budget;
    }

    public override string Words(ClockFace clock) =>
        $"the pump has used its {budget.InWords()} for the day, which ends at {clock.At(dayBegan + day)}";

    /// <summary>Whoever acknowledges the alarm while the budget is used up grants it once more; what is left of a later day
    /// stays as it is.</summary>
    public override void Acknowledged()
    {
        if (used < budget)
        {
            return;
        }

        used = Duration.Zero;
        Changed();
    }

    protected override void SaveOwn(MemoryWriter memory)
    {
        memory.Put($"{Key}/used", run.IsRunning ? used + (memory.Now - countedUpTo) : used);
        memory.PutAge($"{Key}/day age", dayBegan);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        var kept = memory.Length($"{Key}/used") ?? (memory.Knows($"{Key}/used") ? budget : Duration.Zero);

        // A record that makes no sense is no reason to run for longer.
        used = kept < Duration.Zero ? budget : kept;
        dayBegan = memory.TimeOf($"{Key}/day age") ?? start.Monotonic;
    }

    private void Count(Facts facts)
    {
        if (run.Follow(facts))
        {
            // A run under way is kept by the saves that follow its start and its end, and by the heartbeat between. The scan that told
            // the pump off has counted up to itself.
            Changed();
            countedUpTo = run.Since;
        }

        if (run.IsRunning)
        {
            dayBegan = used == Duration.Zero ? countedUpTo : dayBegan;
            used += facts.Now.Monotonic - countedUpTo;
            countedUpTo = facts.Now.Monotonic;
        }
    }

    private void NameDueTimes(Facts facts, Agenda agenda)
    {
        if (used > Duration.Zero)
        {
            agenda.Add(dayBegan + day);
        }

        if (run.IsRunning)
        {
            agenda.Add(facts.Now.Monotonic + (budget - used));
        }
    }
}
