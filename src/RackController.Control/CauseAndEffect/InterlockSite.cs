using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>A site as the table's rows look at it: which loads and sensors stand together.</summary>
internal sealed class InterlockSite(Site site, Moment start)
{
    public Site Site { get; } = site;

    public MonotonicTime Start { get; } = start.Monotonic;

    public ImmutableArray<LoadId> LoadsOf(Rack rack, params ReadOnlySpan<LoadKind> kinds)
    {
        var wanted = kinds.ToArray();
        return [.. Site.Loads.Where(load => load.Rack == rack.Id && wanted.Contains(load.Kind)).Select(load => load.Id)];
    }

    public ImmutableArray<LoadId> LoadsOf(Circuit circuit) =>
        [.. Site.Loads.Where(load => load.Circuit == circuit.Id).Select(load => load.Id)];

    public ImmutableArray<Sensor> SensorsOf(Rack rack, params ReadOnlySpan<SensorKind> kinds)
    {
        var wanted = kinds.ToArray();
        return [.. Site.Sensors.Where(sensor => sensor.Rack == rack.Id && wanted.Contains(sensor.Kind))];
    }

    public ImmutableArray<Sensor> SensesOf(Circuit circuit) =>
        [.. Site.Sensors.Where(sensor => sensor.Kind == SensorKind.SupplySense && sensor.Circuit == circuit.Id)];
}
