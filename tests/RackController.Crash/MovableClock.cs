using System.Diagnostics;

namespace RackController.Crash;

/// <summary>
/// The wall clock of the host as a process sees it through <c>movable-clock.c</c>, which adds the number that stands in a file. The
/// monotonic clocks stay as they are, as they do when somebody sets a clock.
/// </summary>
internal sealed class MovableClock
{
    private readonly string library;
    private readonly string file;
    private TimeSpan offset;

    /// <summary>Sets the clock.</summary>
    /// <param name="library">The library to preload.</param>
    /// <param name="file">A file of its own.</param>
    /// <param name="start">What the clock says at first.</param>
    public MovableClock(string library, string file, DateTimeOffset start)
    {
        this.library = library;
        this.file = file;
        Step(start - DateTimeOffset.UtcNow);
    }

    /// <summary>Sets it on or back, also for a process that runs.</summary>
    public void Step(TimeSpan by)
    {
        offset += by;
        using var handle = File.OpenHandle(file, FileMode.OpenOrCreate, FileAccess.Write);
        RandomAccess.Write(handle, BitConverter.GetBytes(offset.Ticks * TimeSpan.NanosecondsPerTick), 0);
    }

    /// <summary>Has a process live by this clock.</summary>
    public void PutInto(ProcessStartInfo start)
    {
        start.Environment["LD_PRELOAD"] = library;
        start.Environment["MOVABLE_CLOCK"] = file;
    }
}
