using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// Takes what the scan thread hands over, at once and without waiting for anything: whoever listens keeps it in memory
/// and works it off on a thread of its own. Whoever does not care for signs of life or samples need not take them.
/// </summary>
internal interface IScanListener
{
    /// <summary>Something happened in this scan. Called only when there is something to say, and before the relays move.</summary>
    /// <param name="events">What happened, in order; the array is the listener's to keep.</param>
    /// <param name="memory">What must be remembered from now on; null when that did not change.</param>
    void Happened(ControlEvent[] events, ControlMemory? memory);

    /// <summary>A sign of life with what is remembered, although nothing happened.</summary>
    /// <param name="memory">What must be remembered, as of now.</param>
    /// <param name="isUrgent">Whether it is soon out of date, as while a pump runs; otherwise what was kept minutes ago will do.</param>
    void StillAlive(ControlMemory memory, bool isUrgent)
    {
    }

    /// <summary>The relays were told: whoever works off what was handed over may begin. Until then no thread of ours is woken, so
    /// that on a busy board none runs between a float and its pump.</summary>
    void GoOn()
    {
    }

    /// <summary>What the sensors say now; the listener copies what it wants to keep.</summary>
    /// <param name="now">When.</param>
    /// <param name="readings">What they say.</param>
    void Sampled(in Moment now, Readings readings)
    {
    }
}
