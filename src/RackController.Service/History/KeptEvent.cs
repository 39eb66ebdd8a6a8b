using RackController.Control;

namespace RackController.Service;

/// <summary>An event as the journal keeps it.</summary>
/// <param name="Number">Its number in the journal: a later one is larger.</param>
/// <param name="Run">The run of the controller that it belongs to.</param>
/// <param name="Event">What happened.</param>
public sealed record KeptEvent(long Number, long Run, ControlEvent Event);

/// <summary>Which events are asked for.</summary>
/// <param name="Kind">What sort of thing; null for all.</param>
/// <param name="Subject">What they happened to: a name, which stands for everything of it too (<c>north</c> for
/// <c>north/pump</c>); null for all.</param>
public sealed record EventFilter(EventKind? Kind, string? Subject);
