using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Service;

/// <summary>One thing that is wired: a load, a sensor or a contactor.</summary>
/// <param name="Name">Its name.</param>
internal abstract record WiringItem(string Name)
{
    /// <summary>Everything that a site has wired: sensors first, since they guard the pump; of the loads the pump last.</summary>
    public static ImmutableArray<WiringItem> AllOf(Site site) =>
    [
        .. site.Sensors.OrderBy(sensor => sensor.IsContact ? 0 : 1).Select(sensor => new WiredSensor(sensor)),
        .. site.Circuits.Where(circuit => circuit.HasUpstreamContactor).Select(circuit => new WiredContactor(circuit)),
        .. site.Loads.OrderBy(load => load.Kind == LoadKind.Pump ? 1 : 0).Select(load => new WiredLoad(load)),
    ];
}

/// <summary>A load on its relay.</summary>
internal sealed record WiredLoad(Load Load) : WiringItem(Load.Name);

/// <summary>A contactor upstream of a circuit.</summary>
internal sealed record WiredContactor(Circuit Circuit) : WiringItem($"contactor of {Circuit.Name}");

/// <summary>A sensor.</summary>
internal sealed record WiredSensor(Sensor Sensor) : WiringItem(Sensor.Name);

/// <summary>What came of walking through one thing that is wired.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Outcome">How it went.</param>
/// <param name="Text">What was done and seen, as a phrase that can follow "because".</param>
public sealed record WiringResult(string Name, WiringOutcome Outcome, string Text);

/// <summary>How one thing went.</summary>
public enum WiringOutcome
{
    /// <summary>Nobody tried it.</summary>
    Skipped,

    /// <summary>It is wired as the rack file says.</summary>
    Right,

    /// <summary>It is not.</summary>
    Wrong,
}

/// <summary>What a person sees of a walk.</summary>
/// <param name="Number">Which item it is at, from 1.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Name">The item.</param>
/// <param name="Place">Where the rack file has it on the board; empty on a simulated rack.</param>
/// <param name="Words">What to do, or what happens.</param>
/// <param name="Note">What kept it from going on; null for nothing.</param>
/// <param name="Keys">The keys that mean something now, each with its word.</param>
public sealed record WiringPage(
    int Number, int Count, string Name, string Place, string Words, string? Note, ImmutableArray<(char Key, string Word)> Keys);
