using NodaTime;

namespace RackController.Model;

/// <summary>
/// When a scan happens, on both clocks. Interlocks count <see cref="Monotonic"/> time, schedules read <see cref="Wall"/>
/// time, and the two never convert into each other silently.
/// </summary>
/// <param name="Monotonic">The clock that only goes forward.</param>
/// <param name="Wall">What the wall clock says, which may be wrong or step in either direction.</param>
/// <param name="WallTrusted">Whether the wall clock has been set by something that knows the time (network time, a
/// battery-backed clock). False right after the boot of a board without one.</param>
public readonly record struct Moment(MonotonicTime Monotonic, Instant Wall, bool WallTrusted);
