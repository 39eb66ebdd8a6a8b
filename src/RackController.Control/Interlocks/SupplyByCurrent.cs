using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Whether a circuit without a supply sense has its supply, by its current: none at all, while two loads or more are told on, is an
/// outage and not two loads that died at once. While it is away one load at a time stays told on to feel for its return, each for a
/// while, since one of them may be dead.
/// </summary>
internal sealed class SupplyByCurrent
{
    private const int MostDead = 1;
    private static readonly Duration settles = Duration.FromSeconds(5);
    private static readonly Duration feelsFor = Duration.FromMinutes(5);
    private readonly ImmutableArray<LoadId> seen;
    private readonly ImmutableArray<LoadId> feelers;
    private readonly Limit flowing;
    private (bool IsFlowing, bool IsExpected)? sees;
    private MonotonicTime seesSince;
    private MonotonicTime feelsSince;
    private int feeler;

    private SupplyByCurrent(Limit flowing, ImmutableArray<LoadId> seen, ImmutableArray<LoadId> feelers, MonotonicTime start)
    {
        this.flowing = flowing;
        this.seen = seen;
        this.feelers = feelers;
        (seesSince, feelsSince) = (start, start);
    }

    /// <summary>The load that stays told on to feel for the supply.</summary>
    public LoadId Feeler => feelers[feeler];

    /// <summary>How it is known on a circuit; null where it cannot be.</summary>
    public static SupplyByCurrent? Of(InterlockSite at, Circuit circuit)
    {
        var site = at.Site;
        var seen = site.Loads.Where(load => load.Circuit == circuit.Id && LoadBeliefs.IsSeen(site, load)).ToList();
        var feelers = seen.Where(load => load.Kind is LoadKind.Aerator or LoadKind.Fan).OrderBy(load => load.Priority).ToList();
        if (!at.SensesOf(circuit).IsEmpty || feelers.Count == 0 || LoadCurrents.OfCircuit(site, circuit) is not { } sensor)
        {
            return null;
        }

        var smallest = feelers.MinBy(load => load.CurrentA(circuit.VoltageV))!;
        return new SupplyByCurrent(
            at.Limit(sensor, WireCurrent.FlowingA(smallest, circuit.VoltageV)), [.. seen.Select(load => load.Id)],
            [.. feelers.Select(load => load.Id)], at.Start);
    }

    /// <summary>Looks at the current.</summary>
    /// <param name="facts">The facts.</param>
    /// <param name="agenda">Where it names when it will know more.</param>
    /// <param name="isLost">Whether the supply is thought to be away.</param>
    /// <returns>Whether the supply is there; null where nobody can tell.</returns>
    public bool? Look(Facts facts, Agenda agenda, bool isLost)
    {
        var now = facts.Now.Monotonic;
        Feel(now, agenda, isLost);
        if (!facts.IsKnown(flowing.Sensor))
        {
            sees = null;
            return null;
        }

        var looks = (IsFlowing: facts.IsAbove(flowing), IsExpected: IsExpected(facts));
        if (looks != sees)
        {
            (sees, seesSince) = (looks, now);
        }

        if (now < seesSince + settles)
        {
            agenda.Add(seesSince + settles);
            return null;
        }

        return looks.IsFlowing ? true : looks.IsExpected ? false : null;
    }

    private void Feel(MonotonicTime now, Agenda agenda, bool isLost)
    {
        if (!isLost)
        {
            (feeler, feelsSince) = (0, now);
            return;
        }

        if (now >= feelsSince + feelsFor)
        {
            (feeler, feelsSince) = ((feeler + 1) % feelers.Length, now);
        }

        agenda.Add(feelsSince + feelsFor);
    }

    private bool IsExpected(Facts facts)
    {
        var on = 0;
        foreach (var load in seen)
        {
            on += facts.WasOn(load) ? 1 : 0;
        }

        return on > MostDead;
    }
}
