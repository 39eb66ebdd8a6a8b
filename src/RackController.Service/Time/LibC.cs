using System.Runtime.InteropServices;

namespace RackController.Service;

/// <summary>
/// The few calls to the C library that .NET has no word for: the clock that also counts sleep, a sleep that a step of
/// the wall clock cannot freeze, whether the kernel holds the wall clock for synchronised, the advisory file lock, and what
/// memory may go.
/// Layouts are those of 64-bit Linux.
/// </summary>
internal static partial class LibC
{
    /// <summary>The wall clock.</summary>
    public const int ClockRealTime = 0;

    /// <summary>Monotonic, and counting while the board is suspended: a slept-through gap must be seen.</summary>
    public const int ClockBootTime = 7;

    /// <summary>What <c>adjtimex</c> answers when nothing disciplines the wall clock.</summary>
    public const int TimeError = 5;

    /// <summary>More than the 208 bytes of <c>struct timex</c>.</summary>
    public const int TimexSize = 256;

    public const int EventFdCloseOnExecNonBlocking = 0x80000 | 0x800;
    public const int OpenReadWriteCreateCloseOnExec = 0x2 | 0x40 | 0x80000;
    public const int LockExclusiveNonBlocking = 2 | 4;
    public const int MayWriteAndSearch = 2 | 1;
    public const int OpenFolderCloseOnExec = 0x10000 | 0x80000;
    public const int WouldBlock = 11;
    public const short PollIn = 1;

    /// <summary>What <c>madvise</c> takes for pages that can be read from their file again.</summary>
    public const int DontNeed = 4;

    [StructLayout(LayoutKind.Sequential)]
    public struct TimeSpec
    {
        public long Seconds;
        public long Nanoseconds;
    }

    [StructLayout(LayoutKind.Sequential)]
    public struct PollFd
    {
        public int Descriptor;
        public short Events;
        public short Happened;
    }

    // The kernel answers from memory of this process, within less time than telling the collector of a call takes.
    [LibraryImport("libc", EntryPoint = "clock_gettime")]
    [SuppressGCTransition]
    public static partial int ClockGetTime(int clock, out TimeSpec time);

    [LibraryImport("libc", EntryPoint = "adjtimex")]
    public static partial int AdjTimex(ref byte timex);

    [LibraryImport("libc", EntryPoint = "eventfd", SetLastError = true)]
    public static partial int EventFd(uint initial, int flags);

    [LibraryImport("libc", EntryPoint = "ppoll")]
    public static partial int PPoll(ref PollFd descriptors, nuint count, in TimeSpec timeout, nint signalMask);

    [LibraryImport("libc", EntryPoint = "read")]
    public static partial nint Read(int descriptor, out ulong value, nuint size);

    [LibraryImport("libc", EntryPoint = "write")]
    public static partial nint Write(int descriptor, in ulong value, nuint size);

    [LibraryImport("libc", EntryPoint = "close")]
    public static partial int Close(int descriptor);

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    public static partial int Open(string path, int flags, uint mode);

    [LibraryImport("libc", EntryPoint = "access", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int Access(string path, int mode);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    public static partial int FSync(int descriptor);

    [LibraryImport("libc", EntryPoint = "madvise")]
    public static partial int MAdvise(nint start, nuint length, int advice);

    [LibraryImport("libc", EntryPoint = "flock", SetLastError = true)]
    public static partial int FLock(int descriptor, int operation);
}
