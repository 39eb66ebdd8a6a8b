using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Who is looked at in a scan. Control decides by readings, requests, the state of the scan and time, and names on the agenda
/// what time alone can change; so whoever reads what it read, was asked nothing and has nothing due would come to what it
/// came to before, and is left alone. That makes a scan cost what happens, not how many racks there are.
/// </summary>
internal sealed class Attention
{
    private readonly Area controller;
    private readonly ImmutableArray<Area> circuits;
    private readonly ImmutableArray<Area> racks;
    private readonly ImmutableArray<Area> all;
    private readonly ImmutableArray<ImmutableArray<Area>> racksOfCircuit;
    private readonly Area[] bySensor;
    private readonly Area[] called;
    private readonly CircuitId[] calledCircuits;
    private readonly RackId[] calledRacks;
    private int calledCount;
    private int calledCircuitCount;
    private int calledRackCount;

    public Attention(Site site)
    {
        Invariant.Holds(
            site.Sensors.All(sensor => sensor.Rack is null != sensor.Circuit is null), "a sensor watches a rack or a circuit");
        controller = new Area(0, site.Loads, []);
        circuits =
        [
            .. site.Circuits.Select(circuit => new Area(
                1 + circuit.Id.Index,
                [.. site.Loads.Where(load => load.Circuit == circuit.Id)],
                [.. site.Sensors.Where(sensor => sensor.Circuit == circuit.Id)])),
        ];
        racks =
        [
            .. site.Racks.Select(rack => new Area(
                1 + circuits.Length + rack.Id.Index,
                [.. site.Loads.Where(load => load.Rack == rack.Id)],
                [.. site.Sensors.Where(sensor => sensor.Rack == rack.Id)])),
        ];
        all = [controller, .. circuits, .. racks];
        racksOfCircuit =
            [.. circuits.Select(circuit => circuit.Loads.Select(load => racks[load.Rack.Index]).Distinct().ToImmutableArray())];
        bySensor = [.. site.Sensors.Select(sensor => At(Place.Of(sensor)))];
        called = new Area[all.Length];
        calledCircuits = new CircuitId[circuits.Length];
        calledRacks = new RackId[racks.Length];
    }

    /// <summary>What the judging of readings waits for; named anew at every scan.</summary>
    public Agenda Readings { get; } = new();

    /// <summary>Whether nobody is left alone in this scan.</summary>
    public bool IsEverybodyCalled { get; private set; }

    /// <summary>Those that are looked at: the controller first, then circuits, then racks.</summary>
    public ReadOnlySpan<Area> Called => called.AsSpan(0, calledCount);

    /// <summary>The circuits among them.</summary>
    public ReadOnlySpan<CircuitId> CalledCircuits => calledCircuits.AsSpan(0, calledCircuitCount);

    /// <summary>The racks among them.</summary>
    public ReadOnlySpan<RackId> CalledRacks => calledRacks.AsSpan(0, calledRackCount);

    /// <summary>When something is due by itself.</summary>
    public MonotonicTime Earliest
    {
        get
        {
            var earliest = Readings.Earliest;
            foreach (var area in all)
            {
                earliest = MonotonicTime.Earlier(earliest, area.Agenda.Earliest);
            }

            return earliest;
        }
    }

    /// <summary>Whether something concerns everybody in this scan.</summary>
    public bool ConcernsEverybody => controller.IsCalled;

    public Area Of(SensorId sensor) => bySensor[sensor.Index];

    public Area Of(RackId rack) => racks[rack.Index];

    public Area Of(CircuitId circuit) => circuits[circuit.Index];

    public Area At(Place place) => place.Rack is { } rack ? Of(rack) : place.Circuit is { } circuit ? Of(circuit) : controller;

    /// <summary>Sorts things by the area in which they stand.</summary>
    public ImmutableArray<ImmutableArray<T>> ByArea<T>(ImmutableArray<T> things, Func<T, Place> placeOf)
    {
        var sorted = things.ToLookup(thing => At(placeOf(thing)));
        return [.. all.Select(area => sorted[area].ToImmutableArray())];
    }

    /// <summary>Something concerns everybody: the clock, the scan itself, or what a person asks.</summary>
    public void CallAll() => controller.IsCalled = true;

    /// <summary>A sensor says something else.</summary>
    public void Call(SensorId sensor) => bySensor[sensor.Index].IsCalled = true;

    /// <summary>No more calls come for this scan: whoever is called, or has something due, begins with an empty agenda.</summary>
    public void Gather(in Moment now)
    {
        (calledCount, calledCircuitCount, calledRackCount) = (0, 0, 0);
        IsEverybodyCalled = false;
        IsEverybodyCalled = Join(controller, now);
        for (var i = 0; i < circuits.Length; i++)
        {
            if (Join(circuits[i], now))
            {
                calledCircuits[calledCircuitCount++] = new CircuitId(i);
                CallRacksOf(i);
            }
        }

        for (var i = 0; i < racks.Length; i++)
        {
            if (Join(racks[i], now))
            {
                calledRacks[calledRackCount++] = new RackId(i);
            }
        }
    }

    private bool Join(Area area, in Moment now)
    {
        if (!area.IsCalled && !IsEverybodyCalled && area.Agenda.EarliestLook > now.Monotonic)
        {
            return false;
        }

        area.IsCalled = false;
        area.Agenda.Begin(now);
        called[calledCount++] = area;
        return true;
    }

    // What a circuit forbids is decided anew for all its loads.
    private void CallRacksOf(int circuit)
    {
        foreach (var rack in racksOfCircuit[circuit])
        {
            rack.IsCalled = true;
        }
    }
}
