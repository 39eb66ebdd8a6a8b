using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>Which loads draw current, as far as sensors tell, in one run of the controller: the sensor in the wire of a load knows better
/// than that of its circuit.</summary>
internal sealed class PlainCurrents
{
    private readonly Site site;
    private readonly Dictionary<CircuitId, PlainMeter> meters = [];
    private readonly List<PlainWire> wires = [];

    /// <summary>Begins with the first page of a run.</summary>
    public PlainCurrents(Chronicle story)
    {
        site = story.Site;
        foreach (var circuit in site.Circuits)
        {
            if (MeterOf(site, circuit.Id) is { } meter)
            {
                meters[circuit.Id] = new PlainMeter(story, circuit, meter);
            }
        }

        foreach (var load in site.Loads)
        {
            if (InTheWireOf(site, load) is { } sensor)
            {
                wires.Add(new PlainWire(story, load, sensor, meters.GetValueOrDefault(load.Circuit)));
            }
        }
    }

    /// <summary>The sensor of a circuit's current; null where it has none.</summary>
    public static Sensor? MeterOf(Site site, CircuitId circuit) =>
        site.Sensors.FirstOrDefault(sensor => sensor.Kind == SensorKind.CircuitCurrent && sensor.Circuit == circuit);

    /// <summary>Whether a load should draw enough to be told apart on its circuit: a four-hundredth of what the breaker may
    /// carry.</summary>
    public static bool IsLarge(Site site, Load load) =>
        load.CurrentA(site[load.Circuit].VoltageV) / 2 >= 0.00125 * site[load.Circuit].BreakerA;

    /// <summary>Whether any sensor can tell whether a load draws current.</summary>
    public static bool IsMeasured(Site site, Load load) =>
        InTheWireOf(site, load) is not null || (MeterOf(site, load.Circuit) is not null && IsLarge(site, load));

    /// <summary>Reads the last page.</summary>
    /// <returns>What is known of each load.</returns>
    public Flow[] Read()
    {
        foreach (var meter in meters.Values)
        {
            meter.Read();
        }

        Flow[] flows = [.. site.Loads.Select(load => meters.GetValueOrDefault(load.Circuit)?.Of(load) ?? Flow.Unknown)];
        foreach (var wire in wires)
        {
            flows[wire.Load.Id.Index] = wire.Read() ?? flows[wire.Load.Id.Index];
        }

        return flows;
    }

    /// <summary>The sensor in the wire of a load; null where it has none.</summary>
    public static Sensor? InTheWireOf(Site site, Load load) => site.Sensors.FirstOrDefault(sensor =>
        sensor.Kind == SensorKind.PumpCurrent && site[sensor.Rack!.Value].Pump.Load == load.Id);
}
