using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>What would come of a flood that is asked for now, if no reading changes: for whoever thinks about asking.</summary>
/// <param name="Objections">What each interlock says that keeps the pump off now; a flood waits for them.</param>
/// <param name="Shed">The loads that the circuit cannot carry beside the pump, and that go off while it runs.</param>
/// <param name="PumpRunsFor">How long the pump runs at most.</param>
/// <param name="DrainsFor">How long the trays drain after that.</param>
public sealed record FloodOutlook(
    ImmutableArray<string> Objections, ImmutableArray<LoadId> Shed, Duration PumpRunsFor, Duration DrainsFor);
