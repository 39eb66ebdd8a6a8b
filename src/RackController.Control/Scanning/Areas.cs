using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>How a site divides into parts that are looked at, or left alone, as a whole: the controller itself, its circuits and its
/// racks.</summary>
internal sealed class Areas
{
    private readonly ImmutableArray<Area> bySensor;
    private readonly ImmutableArray<ImmutableArray<bool>> drawsFrom;

    public Areas(Site site)
    {
        Invariant.Holds(
            site.Sensors.All(sensor => sensor.Rack is null != sensor.Circuit is null), "a sensor watches a rack or a circuit");
        Controller = new Area(0, site.Loads, []);
        Circuits =
        [
            .. site.Circuits.Select(circuit => new Area(
                1 + circuit.Id.Index,
                [.. site.Loads.Where(load => load.Circuit == circuit.Id)],
                [.. site.Sensors.Where(sensor => CircuitOf(site, sensor) == circuit.Id)])),
        ];
        Racks =
        [
            .. site.Racks.Select(rack => new Area(
                1 + Circuits.Length + rack.Id.Index,
                [.. site.Loads.Where(load => load.Rack == rack.Id)],
                [.. site.Sensors.Where(sensor => sensor.Rack == rack.Id && CircuitOf(site, sensor) is null)])),
        ];
        All = [Controller, .. Circuits, .. Racks];
        bySensor =
        [
            .. site.Sensors.Select(sensor => CircuitOf(site, sensor) is { } circuit ? Of(circuit) : Of(sensor.Rack!.Value)),
        ];
        drawsFrom =
        [
            .. All.Select(area => All
                .Select(other => Racks.Contains(area) && Circuits.Contains(other) && other.Loads.Any(area.Loads.Contains))
                .ToImmutableArray()),
        ];
    }

    /// <summary>What concerns everybody.</summary>
    public Area Controller { get; }

    /// <summary>The circuits, by their identities.</summary>
    public ImmutableArray<Area> Circuits { get; }

    /// <summary>The racks, by their identities.</summary>
    public ImmutableArray<Area> Racks { get; }

    /// <summary>The controller first, then circuits, then racks.</summary>
    public ImmutableArray<Area> All { get; }

    public Area Of(SensorId sensor) => bySensor[sensor.Index];

    public Area Of(RackId rack) => Racks[rack.Index];

    public Area Of(CircuitId circuit) => Circuits[circuit.Index];

    public Area At(Place place) => place.Rack is { } rack ? Of(rack) : place.Circuit is { } circuit ? Of(circuit) : Controller;

    /// <summary>Whether an area is a rack with a load on another, a circuit, and so is looked at whenever that is.</summary>
    public bool DrawsFrom(Area area, Area circuit) => drawsFrom[area.Index][circuit.Index];

    /// <summary>Sorts things by the area in which they stand.</summary>
    public ImmutableArray<ImmutableArray<T>> Sort<T>(ImmutableArray<T> things, Func<T, Place> placeOf)
    {
        var sorted = things.ToLookup(thing => At(placeOf(thing)));
        return [.. All.Select(area => sorted[area].ToImmutableArray())];
    }

    // The current of a pump is looked at with its circuit, which calls the rack too: a welded relay concerns them both.
    private static CircuitId? CircuitOf(Site site, Sensor sensor) =>
        sensor.Kind == SensorKind.PumpCurrent ? site[site[sensor.Rack!.Value].Pump.Load].Circuit : sensor.Circuit;
}
