using RackController.Model;

namespace RackController.Plant;

/// <summary>Every load and circuit of a site: who has power, what flows, what trips.</summary>
internal sealed class SiteElectrics
{
    public SiteElectrics(Site site, BreakerEdge edge)
    {
        Circuits = [.. site.Circuits.Select(circuit => new CircuitElectrics(circuit, edge))];
        Loads = [.. site.Loads.Select(load => new LoadElectrics(load, site[load.Circuit]))];
    }

    public CircuitElectrics[] Circuits { get; }

    public LoadElectrics[] Loads { get; }

    /// <summary>The next time at which currents change by themselves: an inrush that ends or a breaker that trips.</summary>
    /// <param name="now">The time now.</param>
    public MonotonicTime NextChange(MonotonicTime now)
    {
        var next = MonotonicTime.Never;
        foreach (var load in Loads)
        {
            next = MonotonicTime.Earlier(next, load.InrushEnds);
        }

        foreach (var circuit in Circuits)
        {
            next = MonotonicTime.Earlier(next, PlantTime.After(now, circuit.SecondsToTrip));
        }

        return next;
    }

    /// <summary>Adds up energy and warms breakers over a time in which nothing switched.</summary>
    /// <param name="seconds">How long.</param>
    public void Advance(double seconds)
    {
        foreach (var load in Loads)
        {
            load.EnergyJ += load.PowerW * seconds;
            Circuits[load.Load.Circuit.Index].EnergyJ += load.PowerW * seconds;
        }

        foreach (var circuit in Circuits)
        {
            circuit.Advance(seconds);
        }
    }

    /// <summary>Gives power where relay and supply allow it, and lets breakers trip, until nothing changes any more.</summary>
    /// <param name="now">The time now.</param>
    public void Settle(MonotonicTime now)
    {
        bool tripped;
        do
        {
            foreach (var circuit in Circuits)
            {
                circuit.CurrentA = 0;
            }

            foreach (var load in Loads)
            {
                var circuit = Circuits[load.Load.Circuit.Index];
                load.SetPowered(load.RelayOn && circuit.SupplyPresent, now);
                circuit.CurrentA += load.CurrentA;
            }

            tripped = false;
            foreach (var circuit in Circuits)
            {
                tripped |= circuit.TripIfDue();
            }
        }
        while (tripped);
    }
}
