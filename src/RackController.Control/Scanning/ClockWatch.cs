using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Tells when the wall clock steps against the monotonic one, and when its trust changes. It only tells: what follows
/// is for the schedule, which reads wall time anew at every scan.</summary>
internal sealed class ClockWatch(Moment start)
{
    // Discipline by network time slews by at most 0.5 ms a second; a step is coarser than that ever is between two scans.
    private static readonly Duration stepFrom = Duration.FromSeconds(2);
    private Moment last = start;

    /// <summary>Looks at both clocks.</summary>
    /// <returns>Whether the wall clock went with the monotonic one, to the nanosecond, and is trusted as before.</returns>
    public bool Watch(in Moment now, IEventSink events)
    {
        var isSteady = now.WallTrusted == last.WallTrusted;
        var step = now.Wall - last.Wall - (now.Monotonic - last.Monotonic);
        if (step >= stepFrom || step <= -stepFrom)
        {
            Tell(now, step > Duration.Zero ? $"stepped on by {step.InWords()}" : $"stepped back by {(-step).InWords()}",
                "it was set against the monotonic clock", events);
        }

        if (now.WallTrusted != last.WallTrusted)
        {
            Tell(now, now.WallTrusted ? "trusted" : "not trusted",
                now.WallTrusted ? "something that knows the time has set it" : "nothing that knows the time vouches for it", events);
        }

        last = now;
        return isSteady && step == Duration.Zero;
    }

    private static void Tell(in Moment now, string what, string because, IEventSink events) =>
        events.Take(new ControlEvent(now, EventKind.Clock, "wall clock", what, because));
}
