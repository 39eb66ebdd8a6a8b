using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>What a run plan would like of its fan or aerator.</summary>
internal sealed class RunDemand
{
    private readonly SwitchState safeState;
    private readonly MonotonicTime start;
    private readonly Limit? onAbove;
    private readonly Limit? offBelow;

    /// <summary>Where a load run by a reading stays while the reading lies between its two limits.</summary>
    private SwitchState held;

    public RunDemand(RunPlan plan, SwitchState safeState, MonotonicTime start, ICollection<SensorLevel> levels)
    {
        Plan = plan;
        this.safeState = safeState;
        this.start = start;
        held = safeState;
        if (plan is RunByReading reading)
        {
            onAbove = new Limit(reading.Sensor, reading.OnAbove, levels);
            offBelow = new Limit(reading.Sensor, reading.OffBelow, levels);
        }
    }

    public RunPlan Plan { get; }

    public Demand Update(Facts facts, ScheduleClock clock, Agenda agenda) => Plan switch
    {
        RunInCycles cycles => InCycles(cycles, facts.Now.Monotonic, clock, agenda),
        RunByReading reading => ByReading(reading, facts),
        _ => Demand.On(DemandCause.Always),
    };

    private Demand InCycles(RunInCycles cycles, MonotonicTime now, ScheduleClock clock, Agenda agenda)
    {
        if (cycles.Off <= Duration.Zero)
        {
            return Demand.On(DemandCause.Always);
        }

        var on = cycles.On.ToInt64Nanoseconds();
        var whole = on + cycles.Off.ToInt64Nanoseconds();
        var within = (now - start).ToInt64Nanoseconds() % whole;
        var isOn = within < on;
        var next = now + Duration.FromNanoseconds((isOn ? on : whole) - within);
        agenda.Add(next);
        return isOn
            ? Demand.On(DemandCause.CycleOn, clock.TimeAt(next))
            : Demand.Off(DemandCause.CycleOff, clock.TimeAt(next));
    }

    private Demand ByReading(RunByReading reading, Facts facts)
    {
        if (!facts.IsKnown(reading.Sensor))
        {
            held = safeState;
            return new(safeState, DemandCause.ReadingUnknown, Instant.MinValue);
        }

        held = facts.IsAbove(onAbove!) ? SwitchState.On
            : facts.IsBelow(offBelow!) ? SwitchState.Off
            : held;
        return held == SwitchState.On ? Demand.On(DemandCause.ReadingHigh) : Demand.Off(DemandCause.ReadingLow);
    }
}
