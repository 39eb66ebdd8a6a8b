using RackController.Model;

namespace RackController.Plant;

/// <summary>Every load and circuit of a site: who has power, what flows, what trips. Between two changes it only waits.</summary>
internal sealed class SiteElectrics
{
    public SiteElectrics(Site site, PlantStart start)
    {
        Circuits = [.. site.Circuits.Select(circuit => new CircuitElectrics(circuit, start.Breakers))];
        Loads =
        [
            .. site.Loads.Select(load => new LoadElectrics(
                load, site[load.Circuit].VoltageV, Circuits[load.Circuit.Index], start.Seed,
                site.Racks.FirstOrDefault(rack => rack.Pump.Load == load.Id)?.TimeCutout)),
        ];
        foreach (var load in Loads)
        {
            Circuits[load.Load.Circuit.Index].Add(load);
        }
    }

    public CircuitElectrics[] Circuits { get; }

    public LoadElectrics[] Loads { get; }

    /// <summary>The time it has reached; whoever moves it stops at <see cref="NextChange"/> and settles there.</summary>
    public MonotonicTime Now { get; set; }

    /// <summary>The next time at which currents change by themselves: an inrush that ends or a protection that opens.</summary>
    public MonotonicTime NextChange { get; private set; }

    /// <summary>Lets what was switched, and what is due, have its effect.</summary>
    public void Settle()
    {
        NextChange = MonotonicTime.Never;
        foreach (var circuit in Circuits)
        {
            circuit.Settle(Now);
            NextChange = MonotonicTime.Earlier(NextChange, circuit.NextChange);
        }
    }
}
