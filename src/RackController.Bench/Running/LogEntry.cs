using NodaTime;
using RackController.Control;

namespace RackController.Bench;

/// <summary>One line of a run's log: an event of the controller, or one of the scenario's own.</summary>
/// <param name="Elapsed">Time since the run began.</param>
/// <param name="At">The true time.</param>
/// <param name="Clock">What the controller's wall clock said; null for the scenario's own events.</param>
/// <param name="Kind">What sort of thing; null for the scenario's own events.</param>
/// <param name="Subject">What it happened to.</param>
/// <param name="What">What happened.</param>
/// <param name="Because">Why.</param>
public sealed record LogEntry(
    Duration Elapsed, Instant At, Instant? Clock, EventKind? Kind, string Subject, string What, string Because);
