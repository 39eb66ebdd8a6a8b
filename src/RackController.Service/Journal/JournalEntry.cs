using NodaTime;
using RackController.Control;

namespace RackController.Service;

/// <summary>What one scan handed over to be kept.</summary>
/// <param name="Events">What happened, in order.</param>
/// <param name="Memory">What must be remembered from then on; null when that did not change.</param>
internal sealed record JournalEntry(ControlEvent[] Events, ControlMemory? Memory);

/// <summary>What one sensor said at one time, for trends.</summary>
/// <param name="Wall">When, by the wall clock.</param>
/// <param name="Sensor">The sensor's name.</param>
/// <param name="Value">What it said, in the unit of its kind; null when its word was worth nothing.</param>
public readonly record struct Sample(Instant Wall, string Sensor, double? Value);
