using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Sheds when a circuit is measured to carry more than it may for hours, though by nameplates it should not: lights on a low supply, a
/// seized motor, something else plugged in. It only says by how much more than their nameplates the loads draw, and admission does the
/// shedding. Hazard: a warm plug, and a breaker that takes the air away with the light. A starting current is over before it counts.
/// <para>In a dark moment, or as loads come back after it, so little is on that it tells nothing of the rest: then what was shed stays off
/// until the next look. If little is on then too, as at night, it comes back, or nothing that draws much could ever.</para>
/// </summary>
internal sealed class CircuitOverLimit : Interlock
{
    // So much nearer to the limit what was shed must fit before it comes back, and so little more than the nameplates is none.
    private const double ReturnMargin = 1.05;
    private const double AsNameplates = 1.02;

    // Counted in tenths, up to what a seized motor draws.
    private const double Tenth = 10;
    private const double MostFactor = 10;

    // Of what may be on, less than this share is little.
    private const double LittleShare = 0.5;
    private readonly Site site;
    private readonly Circuit circuit;
    private readonly CircuitLimits limits;
    private readonly ImmutableArray<LoadId> drawing;
    private readonly Limit most;
    private readonly RecentTrips trips;
    private MonotonicTime? overSince;
    private MonotonicTime? looksAt;
    private double factor = 1;
    private bool isPutOff;

    public CircuitOverLimit(CauseAndEffectRow row, InterlockSite at, Circuit circuit, Sensor sensor)
        : base(row, Place.Of(circuit), [])
    {
        site = at.Site;
        this.circuit = circuit;
        limits = CircuitLimits.Of(site, circuit.Id);
        drawing = at.LoadsOf(circuit);
        most = at.Limit(sensor, circuit.ContinuousLimitA);
        trips = new RecentTrips(Key, limits.OverLimitsToLatch);
    }

    public override double CurrentFactor => factor;

    public override string Settings =>
        $"{circuit.ContinuousLimitA:0.##} A for {limits.OverLimitAfter.InWords()}; looks again after {limits.OverLimitReturn.InWords()}; "
        + $"{limits.OverLimitsToLatch.Times()} in 24 h latch";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        (looksAt, isPutOff) = factor > 1 && !IsLatched ? (looksAt, isPutOff) : (null, false);
        if (!facts.IsKnown(most.Sensor))
        {
            // The last answer stands.
            overSince = null;
            return factor > 1 && !IsLatched;
        }

        overSince = facts.IsAbove(most) ? overSince ?? now : null;
        if (overSince is { } since && now >= since + limits.OverLimitAfter)
        {
            Shed(facts);
            overSince = now;
        }
        else if (overSince is null && now >= looksAt)
        {
            Return(facts);
        }

        agenda.Add(overSince is { } from ? from + limits.OverLimitAfter : looksAt ?? MonotonicTime.Never);

        // A latch that has caught keeps what it found until somebody resets, once the circuit carries less again.
        return overSince is not null ? factor > 1 : factor > 1 && !IsLatched;
    }

    public override string Words(ClockFace clock) => IsLatched
        ? $"{circuit.Name} carried more than its {circuit.ContinuousLimitA:0.##} A {limits.OverLimitsToLatch.Times()} within 24 h"
        : $"{circuit.Name} carries {factor:0.0} times what its loads should draw, and may carry {circuit.ContinuousLimitA:0.##} A";

    protected override void SaveOwn(MemoryWriter memory)
    {
        memory.Put($"{Key}/tenths", (long)Math.Round(Tenth * factor));
        trips.Save(memory);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        trips.Restore(memory);
        factor = Math.Max(1, (memory.Number($"{Key}/tenths") ?? (long)Tenth) / Tenth);
        looksAt = start.Monotonic + limits.OverLimitReturn;
    }

    protected override void Forget()
    {
        trips.Clear();
        (factor, isPutOff) = (1, false);
    }

    private void Shed(Facts facts)
    {
        if (factor <= 1 && trips.AddAndAskWhetherTooMany(facts.Now.Monotonic))
        {
            Latch();
        }

        // What no nameplate explains, such as a welded relay, cannot be shed and is told all the same.
        isPutOff = false;
        Become(Math.Max(factor, Math.Max(Measured(facts, OnA(facts)), 1 + 1 / Tenth)), facts.Now.Monotonic);
    }

    private void Return(Facts facts)
    {
        var onA = OnA(facts);
        isPutOff = !isPutOff && onA < LittleShare * circuit.ContinuousLimitA / factor;
        var measured = isPutOff ? factor : Measured(facts, onA);
        Become(measured <= AsNameplates ? 1 : Math.Min(factor, measured * ReturnMargin), facts.Now.Monotonic);
    }

    private void Become(double drawsMoreBy, MonotonicTime now)
    {
        factor = Math.Clamp(Math.Ceiling(drawsMoreBy * Tenth) / Tenth, 1, MostFactor);
        looksAt = factor > 1 && !IsLatched ? now + limits.OverLimitReturn : null;
        Changed();
    }

    // What is measured over what the loads that are on should draw.
    private double Measured(Facts facts, double onA) => onA > 0 ? Math.Max(1, facts.ValueWhenDue(most.Sensor) / onA) : 1;

    // What the loads that are on should draw.
    private double OnA(Facts facts)
    {
        var onA = 0.0;
        foreach (var load in drawing)
        {
            onA += facts.WasOn(load) ? site[load].CurrentA(circuit.VoltageV) : 0;
        }

        return onA;
    }
}
