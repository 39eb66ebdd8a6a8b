using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>A place of a site at which a mode can strike.</summary>
/// <param name="Name">For people: <c>north/tier 2</c>, <c>cellar sockets</c>; empty for the controller itself.</param>
public sealed record FaultTarget(string Name)
{
    /// <summary>The rack, of a rack or a tier.</summary>
    public RackId? Rack { get; init; }

    /// <summary>The tier's number, of a tier.</summary>
    public int? TierNumber { get; init; }

    /// <summary>The circuit, of a circuit.</summary>
    public CircuitId? Circuit { get; init; }

    /// <summary>The load, of a load.</summary>
    public LoadId? Load { get; init; }

    /// <summary>The sensor, of a sensor.</summary>
    public SensorId? Sensor { get; init; }

    /// <summary>The rack whose floods tell when to strike; null where any will do.</summary>
    /// <param name="site">The site.</param>
    public RackId? RackOf(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return Rack ?? (Load is { } load ? site[load].Rack : Sensor is { } sensor ? site[sensor].Rack : null);
    }

    /// <summary>A fault of the simulated rack at this place.</summary>
    internal Fault Fault(FaultKind kind, MonotonicTime from, MonotonicTime until, double size) => new(kind, from, until)
    {
        Size = size,
        Rack = Rack,
        TierNumber = TierNumber,
        Circuit = Circuit,
        Load = Load,
        Sensor = Sensor,
    };

    internal static IEnumerable<FaultTarget> OfSite(Site site) => [new("")];

    internal static IEnumerable<FaultTarget> OfRacks(Site site) =>
        site.Racks.Select(rack => new FaultTarget(rack.Name) { Rack = rack.Id });

    internal static IEnumerable<FaultTarget> OfWiredFloats(Site site) =>
        site.Racks.Where(rack => rack.FloatCutout is not null).Select(rack => new FaultTarget(rack.Name) { Rack = rack.Id });

    internal static IEnumerable<FaultTarget> OfTimeRelays(Site site) =>
        site.Racks.Where(rack => rack.TimeCutout is not null).Select(rack => new FaultTarget(rack.Name) { Rack = rack.Id });

    internal static IEnumerable<FaultTarget> OfTiers(Site site) =>
        from rack in site.Racks
        from tier in rack.Tiers
        select new FaultTarget($"{rack.Name}/tier {tier.Number}") { Rack = rack.Id, TierNumber = tier.Number };

    internal static IEnumerable<FaultTarget> OfCircuits(Site site) =>
        site.Circuits.Select(circuit => new FaultTarget(circuit.Name) { Circuit = circuit.Id });

    internal static Func<Site, IEnumerable<FaultTarget>> OfLoads(LoadKind kind) => site => site.Loads
        .Where(load => load.Kind == kind).Select(load => new FaultTarget(load.Name) { Load = load.Id });

    internal static Func<Site, IEnumerable<FaultTarget>> OfSensors(SensorKind kind) => site => site.Sensors
        .Where(sensor => sensor.Kind == kind).Select(sensor => new FaultTarget(sensor.Name) { Sensor = sensor.Id });
}
