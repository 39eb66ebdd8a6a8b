using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Keeps everything on a circuit off while its supply is away and for a quiet period after it came back; the return itself is
/// staged by admission. Hazard: all inrush currents at once trip the breaker again, and a pump and lights that come and go
/// with a failing supply. A boot after an earlier run counts as a supply that came back, because the controller cannot
/// know otherwise. While the sense is unknown its last answer stands: the breaker still protects the wire, and a broken
/// sense input must not stop the aerator.
/// </summary>
internal sealed class SupplyLost : Interlock
{
    private readonly CircuitLimits limits;
    private readonly ImmutableArray<Sensor> senses;
    private readonly SupplyByCurrent? byCurrent;
    private readonly RecentTrips trips;
    private MonotonicTime quietUntil;
    private bool isLost;
    private bool isRestart;

    public SupplyLost(
        CauseAndEffectRow row, Circuit circuit, CircuitLimits limits, ImmutableArray<LoadId> loads,
        ImmutableArray<Sensor> senses, SupplyByCurrent? byCurrent, MonotonicTime start)
        : base(row, Place.Of(circuit), loads)
    {
        this.limits = limits;
        this.senses = senses;
        this.byCurrent = byCurrent;
        trips = new RecentTrips(Key, limits.SupplyTripsToLatch);
        quietUntil = start;
    }

    public override bool StagesReturn => true;

    // Something has to be told on to feel by its current that the supply is back.
    public override bool ActsOn(LoadId load) => byCurrent is null || !isLost || IsLatched || load != byCurrent.Feeler;

    public override string Settings =>
        $"quiet for {limits.SupplyQuietPeriod.InWords()}, then {limits.RestartSpacing.InWords()} from one load to the next; "
        + $"{limits.SupplyTripsToLatch.Times()} in 24 h latch";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        var isThere = IsThere(facts, agenda);
        if (isThere == false)
        {
            Lose(now);
        }
        else if (isLost && isThere == true)
        {
            isLost = false;
            quietUntil = now + limits.SupplyQuietPeriod;
            Changed();
        }

        if (now < quietUntil)
        {
            agenda.Add(quietUntil);
        }

        // A quiet period is no news.
        IsInDoubt = !isLost;

        // While inputs or outputs fail only safe states are on, and a restart every few seconds must not keep the air off.
        return isLost || (now < quietUntil && facts.Conditions.Io.IsOk);
    }

    public override bool ActsOn(SensorId contact) => senses.Any(sense => sense.Id == contact);

    public override string Words(ClockFace clock) => IsLatched
        ? $"the supply was lost {limits.SupplyTripsToLatch.Times()} within 24 h"
        : isLost
            ? "the supply of the circuit is lost"
            : isRestart
                ? $"the circuit stays quiet until {clock.At(quietUntil)} after the restart"
                : $"the circuit stays quiet until {clock.At(quietUntil)} after its supply came back";

    public override void Save(MemoryWriter memory)
    {
        base.Save(memory);
        memory.Put($"{Key}/lost", isLost ? 1 : 0);
        trips.Save(memory);
    }

    public override void Restore(MemoryReader memory, Moment start)
    {
        base.Restore(memory, start);
        trips.Restore(memory);
        if (!memory.IsEmpty)
        {
            // A loss that a restart interrupts is one loss, and still the last answer of a sense that is unknown.
            isLost = memory.Number($"{Key}/lost") == 1;
            isRestart = !isLost;
            quietUntil = start.Monotonic + limits.SupplyQuietPeriod;
        }
    }

    protected override void Forget() => trips.Clear();

    private bool? IsThere(Facts facts, Agenda agenda) =>
        byCurrent is not null ? byCurrent.Look(facts, agenda, isLost)
        : facts.AnyIsOpen(senses) ? false
        : facts.AllAreKnown(senses) ? true
        : null;

    private void Lose(MonotonicTime now)
    {
        if (isLost)
        {
            return;
        }

        isLost = true;
        isRestart = false;
        Changed();
        if (trips.AddAndAskWhetherTooMany(now))
        {
            Latch();
        }
    }
}
