using System.Collections.Immutable;
using System.Device.Gpio;
using Microsoft.Win32.SafeHandles;

namespace RackController.Hardware.CharacterDevice;

/// <summary>
/// A thread that sleeps in the kernel until a watched line changes, then calls whoever listens. It shortens latency; it is
/// no source of truth, since the kernel drops edges when they come faster than they are fetched. A line whose chip is gone
/// is no longer watched.
/// </summary>
internal sealed unsafe class EdgeWatch : IDisposable
{
    private const int EventsPerRead = 16;

    private readonly SafeFileHandle bell;
    private readonly Thread thread;
    private volatile bool ending;
    private ImmutableDictionary<int, HeldLine> lines = ImmutableDictionary<int, HeldLine>.Empty;

    /// <summary>Begins to watch, with no line yet.</summary>
    /// <exception cref="IOException">The kernel gives no event descriptor.</exception>
    internal EdgeWatch()
    {
        var descriptor = LibC.EventFd(0, LibC.NonBlockingCloseOnExec);
        if (descriptor < 0)
        {
            throw LibC.Failure("GPIO edges cannot be watched");
        }

        bell = new SafeFileHandle(descriptor, ownsHandle: true);
        thread = new Thread(Watch) { IsBackground = true, Name = "gpio edges" };
        thread.Start();
    }

    /// <summary>Watches one line more.</summary>
    internal void Add(int offset, HeldLine line)
    {
        ImmutableInterlocked.AddOrUpdate(ref lines, offset, line, (_, _) => line);
        Ring();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        ending = true;
        Ring();
        thread.Join();
        bell.Dispose();
    }

    private void Ring()
    {
        ulong one = 1;
        if (LibC.Write(bell, &one, sizeof(ulong)) < 0)
        {
            throw LibC.Failure("the GPIO edge thread cannot be woken");
        }
    }

    private void Watch()
    {
        while (!ending)
        {
            var watched = lines;
            var offsets = watched.Keys.ToArray();
            var entries = new PollEntry[offsets.Length + 1];
            entries[0] = Entry(bell);
            for (var i = 0; i < offsets.Length; i++)
            {
                entries[i + 1] = Entry(watched[offsets[i]].Handle);
            }

            WatchThese(watched, offsets, entries);
        }
    }

    private void WatchThese(ImmutableDictionary<int, HeldLine> watched, int[] offsets, PollEntry[] entries)
    {
        while (!ending && ReferenceEquals(watched, lines))
        {
            fixed (PollEntry* pointer = entries)
            {
                // A signal may end the wait early, and a kernel short of memory refuses it: the wait begins anew, and not without end.
                if (LibC.Poll(pointer, (nuint)entries.Length, timeoutMs: -1) < 0)
                {
                    Thread.Sleep(1);
                    continue;
                }
            }

            if (entries[0].ReturnedEvents != 0)
            {
                ulong rings;
                _ = LibC.Read(bell, &rings, sizeof(ulong));
            }

            for (var i = 0; i < offsets.Length; i++)
            {
                Serve(offsets[i], watched[offsets[i]], entries[i + 1].ReturnedEvents);
            }
        }
    }

    private void Serve(int offset, HeldLine line, short returned)
    {
        if (returned == 0)
        {
            return;
        }

        var events = stackalloc LineEvent[EventsPerRead];
        if ((returned & LibC.PollIn) != 0 && LibC.Read(line.Handle, events, (nuint)(EventsPerRead * sizeof(LineEvent))) > 0)
        {
            line.Changed?.Invoke(this, new PinValueChangedEventArgs(TypeOf(events[0].Id), offset));
            return;
        }

        // The chip is gone: without this the poll would return at once for ever.
        ImmutableInterlocked.TryRemove(ref lines, offset, out _);
    }

    private static PinEventTypes TypeOf(uint id) => id == 1 ? PinEventTypes.Rising : PinEventTypes.Falling;

    internal static PollEntry Entry(SafeFileHandle file) => new()
    {
        FileDescriptor = (int)file.DangerousGetHandle(),
        Events = LibC.PollIn,
    };
}
