using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Cuts the pump when the reservoir's low float falls dry, or when nobody knows whether it is. Hazard: a pump that runs dry
/// burns. The water sloshes back while trays drain, so the float must read wet for a while before the pump may try again;
/// a float that falls dry repeatedly in one flood latches.
/// </summary>
internal sealed class LowFloat : Interlock
{
    private readonly Rack rack;
    private readonly ImmutableArray<Sensor> floats;
    private MonotonicTime wetSince;
    private bool mustReadWet;
    private bool wasBad = true;
    private bool isDry;
    private long tripsInFlood;
    private long floodOfTrips = -1;

    public LowFloat(CauseAndEffectRow row, Rack rack, ImmutableArray<Sensor> floats, MonotonicTime start)
        : base(row, Place.Of(rack), [rack.Pump.Load])
    {
        this.rack = rack;
        this.floats = floats;
        wetSince = start;
    }

    public override string Settings =>
        $"wet for {rack.Limits.LowFloatRestored.InWords()}; {rack.Limits.LowFloatTripsToLatch.Times()} in one flood latch";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        isDry = facts.AnyIsOpen(floats);
        var isBad = isDry || !facts.AllAreKnown(floats);
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

    public override string Words(ClockFace clock) => IsLatched
        ? $"the reservoir's low float fell dry {rack.Limits.LowFloatTripsToLatch.Times()} in one flood"
        : isDry
            ? "the reservoir's low float is dry"
            : wasBad
                ? "nobody knows whether the reservoir's low float is wet"
                : $"the reservoir's low float must read wet until {clock.At(Restored)}";

    public override void Save(MemoryWriter memory)
    {
        base.Save(memory);
        memory.Put($"{Key}/trips in flood", tripsInFlood);
        memory.Put($"{Key}/flood of trips", floodOfTrips);
    }

    public override void Restore(MemoryReader memory, Moment start)
    {
        base.Restore(memory, start);

        // How long it had read wet is unknown after a restart.
        mustReadWet = !memory.IsEmpty;
        tripsInFlood = memory.Number($"{Key}/trips in flood") ?? 0;
        floodOfTrips = memory.Number($"{Key}/flood of trips") ?? -1;
    }

    protected override void Forget() => tripsInFlood = 0;

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
