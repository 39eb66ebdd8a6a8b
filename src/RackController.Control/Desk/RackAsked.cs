using NodaTime;

namespace RackController.Control;

/// <summary>What people have asked of a rack that outlasts the asking.</summary>
/// <param name="IsStopped">Whether somebody stopped it.</param>
/// <param name="HoldLeft">How long a service hold goes on; null while nobody's hands are in.</param>
/// <param name="SkipsNextFlood">Whether the next flood of the schedule is left out.</param>
public sealed record RackAsked(bool IsStopped, Duration? HoldLeft, bool SkipsNextFlood);
