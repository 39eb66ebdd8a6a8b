using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A stretch of the fault-free day in which one rack is in one phase.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="Phase">The phase.</param>
/// <param name="From">Its beginning.</param>
/// <param name="Until">Its end.</param>
internal sealed record PhaseWindow(RackId Rack, CasePhase Phase, Instant From, Instant Until);
