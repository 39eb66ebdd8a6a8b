using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Fourth step of a scan: of the loads that are wanted and allowed, which may be on now. Each circuit goes through its
/// loads by priority and reserves the current of each that fits its continuous limit, so that what does not fit is shed
/// before anything more important comes on; then at most one relay at a time switches on. Hazard: a tripped breaker.
/// </summary>
internal sealed class Admission
{
    private readonly Site site;
    private readonly Areas areas;
    private readonly ImmutableArray<CircuitAdmission> circuits;
    private readonly AdmissionResult[] results;
    private readonly bool[] wanted;
    private readonly CircuitId[] admitted;
    private int admittedCount;

    public Admission(Site site, Areas areas, MonotonicTime start)
    {
        this.site = site;
        this.areas = areas;
        results = new AdmissionResult[site.Loads.Length];
        wanted = new bool[site.Loads.Length];
        circuits = [.. site.Circuits.Select(circuit => new CircuitAdmission(site, circuit, start))];
        admitted = new CircuitId[circuits.Length];
    }

    /// <summary>What became of each load at the last scan.</summary>
    public ref readonly AdmissionResult Result(LoadId load) => ref results[load.Index];

    /// <summary>The circuits whose loads were decided at the last scan; on all others everything stays as it is.</summary>
    public ReadOnlySpan<CircuitId> Admitted => admitted.AsSpan(0, admittedCount);

    /// <summary>When something is due by itself.</summary>
    public MonotonicTime Earliest
    {
        get
        {
            var earliest = MonotonicTime.Never;
            foreach (var circuit in circuits)
            {
                earliest = MonotonicTime.Earlier(earliest, circuit.Due);
            }

            return earliest;
        }
    }

    /// <summary>Sets whether a load is wanted and allowed.</summary>
    public void Want(Load load, bool isWanted)
    {
        if (wanted[load.Id.Index] != isWanted)
        {
            wanted[load.Id.Index] = isWanted;
            circuits[load.Circuit.Index].Call();
        }
    }

    /// <summary>Lets a circuit decide anew, and sets whether an interlock keeps it quiet, and by how much more than their nameplates
    /// its loads draw.</summary>
    public void Call(CircuitId circuit, bool isQuiet, double currentFactor) => circuits[circuit.Index].Call(isQuiet, currentFactor);

    /// <summary>The contactor of a circuit has just opened, or closed.</summary>
    public void Cut(CircuitId circuit, bool isCut, MonotonicTime now) => circuits[circuit.Index].Cut(isCut, now);

    /// <summary>Decides for the loads of every circuit on which something changed or is due.</summary>
    public void Admit(Facts facts)
    {
        admittedCount = 0;
        foreach (var circuit in circuits)
        {
            var area = areas.Of(circuit.Id);
            facts.AskedBy(area);
            if (!circuit.TryAdmit(facts, wanted, results))
            {
                continue;
            }

            admitted[admittedCount++] = circuit.Id;
            if (facts.IsShedding(circuit.Id) != circuit.IsShedding)
            {
                facts.SetShedding(circuit.Id, circuit.IsShedding);
                area.Agenda.Add(facts.Now.Monotonic);
            }
        }
    }

    /// <summary>The loads that are on and would have to go off if another came on.</summary>
    public ImmutableArray<LoadId> ShedBeside(Load more) => circuits[more.Circuit.Index].ShedBeside(more.Id, wanted, results);

    /// <summary>What became of a load, as a phrase.</summary>
    public string Words(LoadId load, ClockFace clock) => Words(results[load.Index], site[site[load].Circuit], clock);

    internal static string Words(in AdmissionResult result, Circuit circuit, ClockFace clock) =>
        result.Outcome switch
        {
            AdmissionOutcome.NotAsked => "not asked",
            AdmissionOutcome.Admitted =>
                $"{circuit.Name} carries {result.CircuitA:0.0} of {circuit.ContinuousLimitA:0.0} A with it",
            AdmissionOutcome.OverLimit =>
                $"{circuit.Name} would carry {result.CircuitA:0.0} A with it and may carry {circuit.ContinuousLimitA:0.0} A",
            AdmissionOutcome.Cut => $"the contactor of {circuit.Name} is open",
            AdmissionOutcome.WaitsItsTurn => $"{circuit.Name} switches one load at a time; its turn comes at {clock.At(result.Due)}",
            AdmissionOutcome.RelayRests => $"its relay rests until {clock.At(result.Due)}",
            _ => throw new InvariantBrokenException($"admission knows no outcome {result.Outcome}"),
        };
}

/// <summary>What became of a load that is wanted and allowed.</summary>
internal enum AdmissionOutcome
{
    /// <summary>It is not wanted, or not allowed.</summary>
    NotAsked,

    /// <summary>It may be on.</summary>
    Admitted,

    /// <summary>The circuit has no room for it.</summary>
    OverLimit,

    /// <summary>The circuit's contactor is open.</summary>
    Cut,

    /// <summary>Another load on the circuit came on a moment ago.</summary>
    WaitsItsTurn,

    /// <summary>Its own relay went off a moment ago.</summary>
    RelayRests,
}

/// <summary>What became of one load.</summary>
/// <param name="Outcome">What.</param>
/// <param name="CircuitA">Current of the circuit with this load and everything before it, A.</param>
/// <param name="Due">When it may come on, where it has to wait.</param>
internal readonly record struct AdmissionResult(AdmissionOutcome Outcome, double CircuitA, MonotonicTime Due);
