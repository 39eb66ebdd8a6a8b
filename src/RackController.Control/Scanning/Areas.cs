using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>How a site divides into parts that are looked at, or left alone, as a whole: the controller itself, its circuits and its
/// racks.</summary>
internal sealed class Areas
{
    private readonly ImmutableArray<Area> bySensor;

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
                [.. site.Sensors.Where(sensor => sensor.Circuit == circuit.Id)])),
        ];
        Racks =
        [
            .. site.Racks.Select(rack => new Area(
                1 + Circuits.Length + rack.Id.Index,
                [.. site.Loads.Where(load => load.Rack == rack.Id)],
                [.. site.Sensors.Where(sensor => sensor.Rack == rack.Id)])),
        ];
        All = [Controller, .. Circuits, .. Racks];
        bySensor = [.. site.Sensors.Select(sensor => At(Place.Of(sensor)))];
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

    /// <summary>Sorts things by the area in which they stand.</summary>
    public ImmutableArray<ImmutableArray<T>> Sort<T>(ImmutableArray<T> things, Func<T, Place> placeOf)
    {
        var sorted = things.ToLookup(thing => At(placeOf(thing)));
        return [.. All.Select(area => sorted[area].ToImmutableArray())];
    }
}
