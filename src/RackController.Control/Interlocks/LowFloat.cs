using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Cuts the pump when the reservoir's low float falls dry, when its level reads below the pump's intake, or when nobody knows
/// whether the float is dry. Hazard: a pump that runs dry burns. A level is a second witness against a float that is stuck wet; it
/// takes the float's place, unknown too, only where there is no float. The water sloshes back while trays drain, so it must read
/// wet for a while before the pump may try again; a reservoir that falls low repeatedly in one flood latches.
/// </summary>
internal sealed class LowFloat : Interlock
{
    private readonly Rack rack;
    // A level this far above the intake is where waves end, and this much higher it has come back.
    private const double AboveIntakeMm = 5;
    private const double ReturnMm = 10;

    private readonly ImmutableArray<Sensor> floats;
    private readonly ImmutableArray<Sensor> levels;
    private readonly ImmutableArray<(Limit Low, Limit Back)> limits;
    private MonotonicTime wetSince;
    private bool mustReadWet;
    private bool wasBad = true;
    private bool isDry;
    private bool isLevelLow;
    private long tripsInFlood;
    private long floodOfTrips;

    public LowFloat(
        CauseAndEffectRow row, InterlockSite site, Rack rack, ImmutableArray<Sensor> floats, ImmutableArray<Sensor> levels)
        : base(row, Place.Of(rack), [rack.Pump.Load])
    {
        this.rack = rack;
        this.floats = floats;
        this.levels = levels;
        var lowMm = rack.Reservoir.PumpIntakeMm + AboveIntakeMm;
        limits = [.. levels.Select(level => (site.Limit(level, lowMm), site.Limit(level, lowMm + ReturnMm)))];
        wetSince = site.Start;
    }

    public override string Settings =>
        $"wet for {rack.Limits.LowFloatRestored.InWords()}; {rack.Limits.LowFloatTripsToLatch.Times()} in one flood latch";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        isLevelLow = AnyLevelIsLow(facts);
        isDry = isLevelLow | facts.AnyIsOpen(floats);
        var isBad = isDry || !facts.AllAreKnown(floats.IsEmpty ? levels : floats);
        if (isDry && !wasBad)
        {
            CountTrip(facts);
        }

        // The scan that first knows it wet again is where the time of being wet begins, however long ago the one before was.
        if (isBad || wasBad)
        {
            wetSince = facts.Now.Monotonic;
        }

        wasBad = isBad;
        mustReadWet = isDry || (mustReadWet && (isBad || facts.Now.Monotonic < Restored));
        if (mustReadWet && !isBad)
        {
            agenda.Add(Restored);
        }

        // Doubt about the float is told by the float's own alarm.
        IsInDoubt = !isDry;
        return isBad || mustReadWet;
    }

    public override bool ActsOn(SensorId contact) => floats.Any(sensor => sensor.Id == contact);

    public override string Words(ClockFace clock) => IsLatched
        ? $"the reservoir fell low {rack.Limits.LowFloatTripsToLatch.Times()} in one flood"
        : isLevelLow
            ? "the reservoir's level is down to the pump's intake"
            : isDry
                ? "the reservoir's low float is dry"
                : wasBad
                    ? floats.IsEmpty ? "nobody knows the reservoir's level" : "nobody knows whether the reservoir's low float is wet"
                    : $"the reservoir's low float must read wet until {clock.At(Restored)}";

    protected override void SaveOwn(MemoryWriter memory)
    {
        memory.Put($"{Key}/trips in flood", tripsInFlood);
        memory.Put($"{Key}/flood of trips", floodOfTrips);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        // How long it had read wet is unknown after a restart.
        mustReadWet = !memory.IsEmpty;
        tripsInFlood = memory.Number($"{Key}/trips in flood") ?? 0;
        floodOfTrips = memory.Number($"{Key}/flood of trips") ?? 0;
    }

    protected override void Forget() => tripsInFlood = 0;

    private bool AnyLevelIsLow(Facts facts)
    {
        var any = false;
        for (var i = 0; i < levels.Length; i++)
        {
            any |= facts.IsKnown(levels[i].Id) && facts.IsBelow(isLevelLow ? limits[i].Back : limits[i].Low);
        }

        return any;
    }

    private MonotonicTime Restored => wetSince + rack.Limits.LowFloatRestored;

    private void CountTrip(Facts facts)
    {
        if (!facts.WasOn(rack.Pump.Load))
        {
            return;
        }

        var flood = facts.About(rack.Id).FloodNumber;
        tripsInFlood = flood == floodOfTrips ? tripsInFlood + 1 : 1;
        floodOfTrips = flood;
        Changed();
        if (tripsInFlood >= rack.Limits.LowFloatTripsToLatch)
        {
            Latch();
        }
    }
}
