using System.Runtime.InteropServices;

namespace RackController.Page;

/// <summary>Lets a thread have the processor only when nobody else wants it, so that what it reckons makes no scan late.</summary>
internal static partial class QuietThread
{
    private const int OfThread = 0;
    private const int LowestPriority = 19;

    /// <summary>Makes the calling thread quiet, for good. Where the kernel refuses, it is only as loud as any other.</summary>
    public static void Begin() => _ = SetPriority(OfThread, 0, LowestPriority);

    // On Linux, 0 is the calling thread and not its process.
    [LibraryImport("libc", EntryPoint = "setpriority")]
    private static partial int SetPriority(int which, uint who, int priority);
}
