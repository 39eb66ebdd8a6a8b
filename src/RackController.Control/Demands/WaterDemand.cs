using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// What pump and tier valves would like in each phase of a flood. Valves open first, while the flood waits, so that the
/// pump does not start against closed ones and no column of water is stopped short; they stay open however long it waits,
/// because nobody knows when the pump may start. While the trays drain, valves are open only where no check valve stands in
/// the way: there the trays empty back through the supply too, and a tray without a weep has no other way out. With a
/// check valve they close, which keeps the riser's water out of the lower trays.
/// </summary>
internal sealed class WaterDemand(Site site, Rack rack)
{
    private static readonly Duration atLeast = Duration.FromSeconds(10);

    private readonly Duration valvesFirst = ValvesFirst(site, rack);
    private readonly ImmutableArray<Tier> valved = [.. rack.Tiers.Where(tier => tier.Valve is not null)];
    private MonotonicTime firstOpenSince;
    private bool wasAnyOpen;

    // How long the pump waits for all valves once the first is open, and for those of others that come between them. A valve that may not
    // open then costs its own tier the flood, but not the others; against nothing but closed valves the pump never runs. After a restart
    // or a dark moment loads come further apart than on other days, so that is what each is given.
    private static Duration ValvesFirst(Site site, Rack rack)
    {
        var circuits = site.Loads.Where(load => load.Rack == rack.Id && load.Kind == LoadKind.Valve).Select(load => load.Circuit).ToList();
        return site.Loads.Where(load => load.Kind == LoadKind.Valve && circuits.Contains(load.Circuit)).Aggregate(
            atLeast, (length, load) => length + Duration.Max(
                CircuitAdmission.AloneFor(site, load), CircuitLimits.Of(site, load.Circuit).RestartSpacing));
    }

    public void Update(
        Facts facts, FloodCycle cycle, TiersInUse tiers, ScheduleClock clock, Instant nextFlood, Span<Demand> demands,
        Agenda agenda)
    {
        var (cause, until) = cycle.Phase switch
        {
            FloodPhase.Waiting => (DemandCause.FloodWaiting, Instant.MinValue),
            FloodPhase.Filling => (DemandCause.FloodFilling, clock.TimeAt(cycle.PhaseEnds)),
            FloodPhase.Soaking => (DemandCause.FloodSoaking, clock.TimeAt(cycle.PhaseEnds)),
            FloodPhase.Draining => (DemandCause.FloodDraining, clock.TimeAt(cycle.PhaseEnds)),
            _ when tiers.Count == 0 => (DemandCause.TierOutOfUse, Instant.MinValue),
            _ => (DemandCause.NoFlood, nextFlood == Instant.MaxValue ? Instant.MinValue : nextFlood),
        };
        var open = cycle.WantsPump || (cycle.Phase == FloodPhase.Draining && !rack.Supply.HasCheckValve);
        foreach (var tier in valved)
        {
            demands[tier.Valve!.Value.Index] = !tiers[tier.Number] ? Demand.Off(DemandCause.TierOutOfUse)
                : new(open ? SwitchState.On : SwitchState.Off, cause, until);
        }

        demands[rack.Pump.Load.Index] = new(
            cycle.WantsPump && WaterHasAWay(facts, cycle, tiers, agenda) ? SwitchState.On : SwitchState.Off,
            cause,
            until);
    }

    private bool WaterHasAWay(Facts facts, FloodCycle cycle, TiersInUse tiers, Agenda agenda)
    {
        var (anyOpen, allOpen) = (false, true);
        foreach (var tier in rack.Tiers)
        {
            if (tiers[tier.Number])
            {
                var isOpen = tier.Valve is not { } valve || facts.WasOn(valve);
                anyOpen |= isOpen;
                allOpen &= isOpen;
            }
        }

        firstOpenSince = wasAnyOpen && anyOpen ? firstOpenSince : facts.Now.Monotonic;
        wasAnyOpen = anyOpen;
        var givesUp = (firstOpenSince > cycle.PhaseBegan ? firstOpenSince : cycle.PhaseBegan) + valvesFirst;
        if (!anyOpen || allOpen || cycle.Phase != FloodPhase.Waiting || facts.Now.Monotonic >= givesUp)
        {
            return anyOpen;
        }

        agenda.Add(givesUp);
        return false;
    }
}
