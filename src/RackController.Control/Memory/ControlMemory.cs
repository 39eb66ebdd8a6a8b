using System.Collections.Immutable;
using NodaTime;

namespace RackController.Control;

/// <summary>
/// What interlocks, floods and alarms must remember across a restart or power cut: latches, run totals, timers, the
/// last flood. Timers are kept as ages, because the monotonic clock starts anew; the time spent away is added only where
/// a trusted wall clock can tell it, and is taken as none where that is the worse assumption. Flat and named, so that a
/// journal can keep it and another version can read it.
/// </summary>
/// <param name="SavedAt">What the wall clock said when this was taken.</param>
/// <param name="WallTrusted">Whether the wall clock was trusted then.</param>
/// <param name="Items">Named numbers; durations in milliseconds.</param>
public sealed record ControlMemory(Instant SavedAt, bool WallTrusted, ImmutableSortedDictionary<string, long> Items);
