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
        byCircuit =
        [
            .. site.Circuits.Select(circuit => site.Loads.Where(load => load.Circuit == circuit.Id)
                .SelectMany(load => InItsWire(site, load, start, levels)).ToImmutableArray()),
        ];
    }

    /// <summary>Whether the current of a load is known by anybody.</summary>
    public static bool IsMeasured(Site site, Load load) => SensorOf(site, load) is not null;

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

    private static IEnumerable<ICurrentJudge> InItsWire(
        Site site, Load load, MonotonicTime start, ICollection<SensorLevel> levels) => SensorOf(site, load) is { } sensor
            ? [new WireCurrent(load, new Limit(sensor, WireCurrent.FlowingA(load, site[load.Circuit].VoltageV), levels), start)]
            : [];

    private static SensorId? SensorOf(Site site, Load load)
    {
        var sensor = site.Sensors.FirstOrDefault(sensor =>
            sensor.Kind == SensorKind.PumpCurrent && site[sensor.Rack!.Value].Pump.Load == load.Id);
        return sensor?.Id;
    }
}
