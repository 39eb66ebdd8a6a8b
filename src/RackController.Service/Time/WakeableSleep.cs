using System.ComponentModel;
using System.Runtime.InteropServices;

namespace RackController.Service;

/// <summary>
/// A sleep that another thread can end. It waits in the kernel on the monotonic clock, because timed waits of some
/// runtime builds freeze when the wall clock is set back, and a frozen scan must not depend on the runtime's version.
/// </summary>
internal sealed class WakeableSleep : IDisposable
{
    private readonly int descriptor = LibC.EventFd(0, LibC.EventFdCloseOnExecNonBlocking);
    private int disposed;

    public WakeableSleep()
    {
        if (descriptor < 0)
        {
            throw new Win32Exception(Marshal.GetLastPInvokeError());
        }
    }

    /// <summary>Sleeps for a while, or until woken; a wake that came before counts for this sleep.</summary>
    /// <param name="nanoseconds">How long; nothing or less returns at once.</param>
    public void Sleep(long nanoseconds)
    {
        if (nanoseconds <= 0)
        {
            return;
        }

        var poll = new LibC.PollFd { Descriptor = descriptor, Events = LibC.PollIn };
        var timeout = new LibC.TimeSpec { Seconds = nanoseconds / 1_000_000_000, Nanoseconds = nanoseconds % 1_000_000_000 };
        var answer = LibC.PPoll(ref poll, 1, timeout, 0);
        if (answer > 0)
        {
            _ = LibC.Read(descriptor, out _, sizeof(ulong));
        }
        else if (answer < 0)
        {
            // A signal, or a kernel that cannot wait: the caller looks at the clock and comes again, and not without end.
            Thread.Sleep(1);
        }
    }

    /// <summary>Ends the present or the next sleep.</summary>
    public void Wake()
    {
        if (Volatile.Read(ref disposed) == 0)
        {
            _ = LibC.Write(descriptor, 1UL, sizeof(ulong));
        }
    }

    public void Dispose()
    {
        if (Interlocked.Exchange(ref disposed, 1) == 0)
        {
            _ = LibC.Close(descriptor);
        }
    }
}
