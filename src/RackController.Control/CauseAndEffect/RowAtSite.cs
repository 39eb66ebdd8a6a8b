using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>One row of the cause-and-effect table as a certain site has it.</summary>
/// <param name="Row">The row.</param>
/// <param name="Stands">Where it stands, in the order of the rack file; empty where the row does not exist at all.</param>
/// <param name="Lacking">The racks or circuits that do not have it, because they lack what it needs.</param>
public sealed record RowAtSite(CauseAndEffectRow Row, ImmutableArray<RowStand> Stands, ImmutableArray<string> Lacking);

/// <summary>A row at one place.</summary>
/// <param name="Place">The place, as alarms name it: a rack, a tier, a circuit, a sensor or the controller.</param>
/// <param name="Rack">The rack; null elsewhere.</param>
/// <param name="Circuit">The circuit; null elsewhere.</param>
/// <param name="Loads">The loads that it acts on; empty where it only tells.</param>
/// <param name="Settings">The limits that it keeps, in words; empty when it has none.</param>
public sealed record RowStand(string Place, RackId? Rack, CircuitId? Circuit, ImmutableArray<LoadId> Loads, string Settings);
