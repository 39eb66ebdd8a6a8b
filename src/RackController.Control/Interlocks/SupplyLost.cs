using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Keeps everything on a circuit off while its supply is away and for a quiet period after it came back; the return itself is
/// staged by admission. Hazard: all inrush currents at once trip the breaker again, and a pump and lights that come and go
/// with a failing supply. A boot after an earlier run counts as a supply that came back, because the controller cannot
/// know otherwise; but where that run came to its end with failing or late scans, whoever supervises it may start it anew every few
/// seconds, and then aerator and fans stay on, as they are by their wiring. While the sense is unknown its last answer stands: the
/// breaker still protects the wire, and a broken sense input must not stop the aerator.
/// </summary>
internal sealed class SupplyLost : Interlock
{
    private readonly CircuitLimits limits;
    private readonly ImmutableArray<Sensor> senses;
    private readonly SupplyByCurrent? byCurrent;
    private readonly RecentTrips trips;
    private readonly ImmutableArray<LoadId> onAtRest;
    private MonotonicTime quietUntil;
    private MonotonicTime failedUntil;
    private bool isLost;
    private bool isRestart;
    private bool hasFailed;

    public SupplyLost(CauseAndEffectRow row, InterlockSite site, Circuit circuit)
        : base(row, Place.Of(circuit), site.LoadsOf(circuit))
    {
        limits = CircuitLimits.Of(site.Site, circuit.Id);
        senses = site.SensesOf(circuit);
        byCurrent = SupplyByCurrent.Of(site, circuit);
        trips = new RecentTrips(Key, limits.SupplyTripsToLatch);
        onAtRest = [.. Loads.Where(load => site.Site[load].SafeState == SwitchState.On)];
        (quietUntil, failedUntil) = (site.Start, site.Start);
    }

    public override bool StagesReturn => true;

    // Something has to be told on to feel by its current that the supply is back.
    public override bool ActsOn(LoadId load) => IsLatched
        || (isLost ? load != byCurrent?.Feeler : !isRestart || !hasFailed || !onAtRest.Contains(load));

    public override string Settings =>
        $"quiet for {limits.SupplyQuietPeriod.InWords()}, then {limits.RestartSpacing.InWords()} from one load to the next; "
        + $"{limits.SupplyTripsToLatch.Times()} in 24 h latch";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        NoteFailing(facts, agenda);
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

        // While inputs or outputs fail only safe states are on.
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

    protected override void SaveOwn(MemoryWriter memory)
    {
        memory.Put($"{Key}/lost", isLost ? 1 : 0);
        memory.Put($"{Key}/scans-failed", hasFailed ? 1 : 0);
        trips.Save(memory);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        trips.Restore(memory);
        if (!memory.IsEmpty)
        {
            // A loss that a restart interrupts is one loss, and still the last answer of a sense that is unknown.
            isLost = memory.Number($"{Key}/lost") == 1;
            isRestart = !isLost;
            hasFailed = memory.Number($"{Key}/scans-failed") == 1;
            quietUntil = start.Monotonic + limits.SupplyQuietPeriod;
            failedUntil = hasFailed ? quietUntil : failedUntil;
        }
    }

    protected override void Forget() => trips.Clear();

    // Whoever has just started only presumes that outputs work, and a line may fail only when it is switched: so it is remembered.
    private void NoteFailing(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        failedUntil = facts.IsScanFaulty ? now + limits.SupplyQuietPeriod : failedUntil;
        if (now < failedUntil)
        {
            agenda.Add(failedUntil);
        }

        if (hasFailed != now < failedUntil)
        {
            hasFailed = !hasFailed;
            Changed();
        }
    }

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
