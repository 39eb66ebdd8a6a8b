using RackController.Model;

namespace RackController.Service;

/// <summary>The clock that a scan loop lives by, and how it waits. <see cref="Now"/> and <see cref="Wake"/> may be called from
/// any thread; only the scan thread sleeps.</summary>
internal interface IScanClock : IDisposable
{
    /// <summary>The moment, on both clocks. Allocates nothing.</summary>
    Moment Now();

    /// <summary>Sleeps until a time, or until somebody wakes the sleeper, whichever is first. May return a little early.</summary>
    /// <param name="due">Until when; a time that has passed returns at once.</param>
    void SleepUntil(MonotonicTime due);

    /// <summary>Ends the present or the next sleep at once.</summary>
    void Wake();
}
