using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Who draws current, as far as sensors tell: worked out once in a scan, before interlocks look.</summary>
internal sealed class LoadCurrents
{
    private readonly Areas areas;
    private readonly ImmutableArray<ImmutableArray<ICurrentJudge>> byCircuit;

    public LoadCurrents(Site site, Areas areas, MonotonicTime start, ICollection<SensorLevel> levels)
    {
        this.areas = areas;
        byCircuit = [.. site.Circuits.Select(circuit => Judges(site, circuit, start, levels).ToImmutableArray())];
    }

    /// <summary>Judges on the circuits that are called.</summary>
    public void Look(Attention attention, Facts facts)
    {
        foreach (var circuit in attention.CalledCircuits)
        {
            var area = areas.Of(circuit);
            facts.AskedBy(area);
            foreach (var judge in byCircuit[circuit.Index])
            {
                judge.Look(facts, area.Agenda);
            }
        }
    }

    /// <summary>Whether anybody can know whether a load draws current.</summary>
    public static bool IsMeasured(Site site, Load load) =>
        InItsWire(site, load) is not null || (OfCircuit(site, site[load.Circuit]) is not null && LoadBeliefs.IsSeen(site, load));

    /// <summary>The sensor of a circuit's current; null where it has none.</summary>
    public static Sensor? OfCircuit(Site site, Circuit circuit) => site.Sensors.FirstOrDefault(sensor =>
        sensor.Kind == SensorKind.CircuitCurrent && sensor.Circuit == circuit.Id);

    // The circuit's own sensor first: one in a wire knows better.
    private static IEnumerable<ICurrentJudge> Judges(Site site, Circuit circuit, MonotonicTime start, ICollection<SensorLevel> levels)
    {
        var steps = OfCircuit(site, circuit) is { } meter ? new StepCurrents(site, circuit, meter.Id, start) : null;
        if (steps is not null)
        {
            yield return steps;
        }

        foreach (var load in site.Loads.Where(load => load.Circuit == circuit.Id && InItsWire(site, load) is not null))
        {
            var flowing = new Limit(InItsWire(site, load)!.Id, WireCurrent.FlowingA(load, circuit.VoltageV), levels);
            yield return new WireCurrent(load, flowing, steps, start);
        }
    }

    /// <summary>The sensor in the wire of a load; null where it has none.</summary>
    public static Sensor? InItsWire(Site site, Load load) => site.Sensors.FirstOrDefault(sensor =>
        sensor.Kind == SensorKind.PumpCurrent && site[sensor.Rack!.Value].Pump.Load == load.Id);
}
