using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Building;

/// <summary>Numbers the loads and sensors of a site while it is built.</summary>
/// <param name="circuits">The circuits, already numbered.</param>
internal sealed class Ledger(ImmutableArray<CircuitPart> circuits)
{
    private readonly List<Load> loads = [];
    private readonly List<Sensor> sensors = [];

    /// <summary>The loads so far.</summary>
    public ImmutableArray<Load> Loads => [.. loads];

    /// <summary>The sensors so far.</summary>
    public ImmutableArray<Sensor> Sensors => [.. sensors];

    /// <summary>The parts that the loads were made of, in the same order.</summary>
    public List<LoadPart> LoadParts { get; } = [];

    /// <summary>The parts that the sensors were made of, in the same order.</summary>
    public List<SensorPart> SensorParts { get; } = [];

    /// <summary>The circuit that is called so; without a name the only one.</summary>
    public CircuitId CircuitNamed(string? name) =>
        new(name is null ? 0 : circuits.Select(circuit => circuit.Name).ToList().IndexOf(name));

    /// <summary>The voltage of the circuit that is called so; without a name of the only one.</summary>
    public double VoltageV(string? name) => circuits[CircuitNamed(name).Index].Supply!.VoltageV;

    /// <summary>Adds a load of a rack.</summary>
    public LoadId Add(LoadPart part, RackId rack, RackPart rackPart)
    {
        var circuit = CircuitNamed(part.Circuit ?? rackPart.Circuit);
        var id = new LoadId(loads.Count);
        loads.Add(new Load
        {
            Id = id,
            Name = $"{rackPart.Name}/{part.ShortName}",
            Kind = part.Kind,
            Rack = rack,
            TierNumber = part.TierNumber,
            Circuit = circuit,
            PowerW = part.PowerOn(VoltageV(part.Circuit ?? rackPart.Circuit)),
            PowerFactor = part.PowerFactor,
            InrushMultiple = part.InrushMultiple,
            Priority = part.Priority,
            SafeState = part.SafeState,
            Contact = part.Contact,
            RatedOperations = part.RatedOperations,
        });
        LoadParts.Add(part);
        return id;
    }

    /// <summary>Adds a sensor.</summary>
    /// <param name="part">The sensor as written.</param>
    /// <param name="owner">Name of its rack or circuit.</param>
    /// <param name="range">The values that can be true.</param>
    /// <param name="rack">Its rack, if it has one.</param>
    /// <param name="circuit">Its circuit, if it has one.</param>
    public SensorId Add(
        SensorPart part, string owner, (double Min, double Max) range, RackId? rack = null, CircuitId? circuit = null)
    {
        var id = new SensorId(sensors.Count);
        sensors.Add(new Sensor
        {
            Id = id,
            Name = part.TierNumber is { } tier ? $"{owner}/tier {tier} {part.ShortName}" : $"{owner}/{part.ShortName}",
            Kind = part.Kind,
            Rack = rack,
            TierNumber = part.TierNumber,
            Circuit = circuit,
            HeightMm = part.HeightMm,
            PlausibleMin = range.Min,
            PlausibleMax = range.Max,
            StaleAfter = part.StaleAfter,
        });
        SensorParts.Add(part);
        return id;
    }
}
