using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>A site as the table's rows look at it: which loads and sensors stand together, and what they are held to.</summary>
/// <param name="site">The site.</param>
/// <param name="start">The moment of taking charge.</param>
/// <param name="levels">Where every value that a measuring sensor is compared with is named.</param>
internal sealed class InterlockSite(Site site, Moment start, ICollection<SensorLevel> levels)
{
    public Site Site { get; } = site;

    public MonotonicTime Start { get; } = start.Monotonic;

    /// <summary>The loads of which it is known whether they draw current.</summary>
    public IEnumerable<Load> MeasuredLoads => Site.Loads.Where(load => LoadCurrents.IsMeasured(Site, load));

    /// <summary>The circuits whose current is measured.</summary>
    public IEnumerable<(Circuit Circuit, Sensor Sensor)> Metered =>
        from circuit in Site.Circuits
        let sensor = LoadCurrents.OfCircuit(Site, circuit)
        where sensor is not null
        select (circuit, sensor);

    /// <summary>The loads that an interlock switches, by their relays or by the contactors of their circuits.</summary>
    public ImmutableArray<LoadId> TouchedBy(Interlock interlock) =>
        interlock.Row.Effect == RowEffect.CutCircuit
            ? [.. interlock.MayCut.SelectMany(circuit => LoadsOf(Site[circuit]))]
            : interlock.Loads;

    /// <summary>A value that a sensor is compared with.</summary>
    public Limit Limit(Sensor sensor, double value) => new(sensor.Id, value, levels);

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
