using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Who is looked at in a scan. Control decides by readings, requests, the state of the scan and time, and names on the agenda
/// what time alone can change; so whoever reads what it read, was asked nothing and has nothing due would come to what it
/// came to before, and is left alone. That makes a scan cost what happens, not how many racks there are. Calls are the shortcut and
/// looking is the truth: whatever no call came for is looked at within <see cref="ScansToCallAll"/> scans all the same, one circuit
/// after the other with its racks, so that no scan costs much more than another.
/// </summary>
internal sealed class Attention
{
    /// <summary>At ten scans a second, the second within which a pump must be off.</summary>
    public const int ScansToCallAll = 10;

    private readonly Areas areas;
    private readonly ImmutableArray<ImmutableArray<Area>> racksOfCircuit;
    private readonly Area[] called;
    private readonly CircuitId[] calledCircuits;
    private readonly RackId[] calledRacks;
    private int turn;
    private int calledCount;
    private int calledCircuitCount;
    private int calledRackCount;

    public Attention(Areas areas)
    {
        this.areas = areas;
        racksOfCircuit =
            [.. areas.Circuits.Select(circuit => circuit.Loads.Select(load => areas.Of(load.Rack)).Distinct().ToImmutableArray())];
        called = new Area[areas.All.Length];
        calledCircuits = new CircuitId[areas.Circuits.Length];
        calledRacks = new RackId[areas.Racks.Length];
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
            foreach (var area in areas.All)
            {
                earliest = MonotonicTime.Earlier(earliest, area.Agenda.Earliest);
            }

            return earliest;
        }
    }

    /// <summary>Whether something concerns everybody in this scan.</summary>
    public bool ConcernsEverybody => areas.Controller.IsCalled;

    /// <summary>Begins a scan, to which nobody is called yet but those whose turn it is.</summary>
    public void Begin(in Moment now)
    {
        Readings.Begin(now);
        turn = (turn + 1) % ScansToCallAll;
        for (var i = turn; i < areas.Circuits.Length; i += ScansToCallAll)
        {
            areas.Circuits[i].IsCalled = true;
        }
    }

    /// <summary>Something concerns everybody: the clock, the scan itself, or what a person asks.</summary>
    public void CallAll() => areas.Controller.IsCalled = true;

    /// <summary>Where a sensor stands.</summary>
    public Area AreaOf(SensorId sensor) => areas.Of(sensor);

    /// <summary>A sensor says something else.</summary>
    public void Call(SensorId sensor) => areas.Of(sensor).IsCalled = true;

    /// <summary>No more calls come for this scan: whoever is called, or has something due, begins with an empty agenda.</summary>
    public void Gather(in Moment now)
    {
        (calledCount, calledCircuitCount, calledRackCount) = (0, 0, 0);
        IsEverybodyCalled = false;
        IsEverybodyCalled = Join(areas.Controller, now);
        for (var i = 0; i < areas.Circuits.Length; i++)
        {
            if (Join(areas.Circuits[i], now))
            {
                calledCircuits[calledCircuitCount++] = new CircuitId(i);
                CallRacksOf(i);
            }
        }

        for (var i = 0; i < areas.Racks.Length; i++)
        {
            if (Join(areas.Racks[i], now))
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
