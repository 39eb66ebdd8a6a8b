using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>A part of a site that is looked at, or left alone, as a whole: the controller itself, a circuit or a rack.</summary>
/// <param name="index">Position among the areas of the site, from 0.</param>
/// <param name="loads">The loads of the rack, or on the circuit, in the order of the site.</param>
/// <param name="sensors">The sensors of the rack or circuit.</param>
internal sealed class Area(int index, ImmutableArray<Load> loads, ImmutableArray<Sensor> sensors)
{
    public int Index => index;

    public ImmutableArray<Load> Loads => loads;

    public ImmutableArray<Sensor> Sensors => sensors;

    /// <summary>Whether a load is one of its own.</summary>
    public bool Holds(LoadId load) => loads.Any(own => own.Id == load);

    /// <summary>What is due here by itself, as of the last look.</summary>
    public Agenda Agenda { get; } = new();

    /// <summary>Whether it is looked at in this scan.</summary>
    public bool IsCalled { get; set; }
}
