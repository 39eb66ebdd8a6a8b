using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// Keeps the wall clock in step with the monotonic one until it really moves against it. Two clocks that are read one after the other
/// never agree to the nanosecond, and to Control a wall clock that moves concerns everybody on the site at every scan.
/// </summary>
internal sealed class SteadyWall
{
    /// <summary>Less than this is the time between two readings of clocks, not a clock that moves; no schedule is as fine.</summary>
    private static readonly Duration moves = Duration.FromMilliseconds(1);

    private Duration? offset;

    /// <summary>The wall time that belongs to a monotonic time.</summary>
    /// <param name="monotonic">The monotonic time.</param>
    /// <param name="wall">What the wall clock read beside it.</param>
    /// <returns>Within a millisecond of that.</returns>
    public Instant At(MonotonicTime monotonic, Instant wall)
    {
        var sinceStart = monotonic - MonotonicTime.Zero;
        var now = wall - NodaConstants.UnixEpoch - sinceStart;
        var kept = offset is { } known && now < known + moves && now > known - moves ? known : now;
        offset = kept;
        return NodaConstants.UnixEpoch + sinceStart + kept;
    }
}
