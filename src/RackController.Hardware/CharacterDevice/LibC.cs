using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace RackController.Hardware.CharacterDevice;

/// <summary>The few calls of the C library that the GPIO character device needs.</summary>
internal static unsafe partial class LibC
{
    internal const int NoSuchDeviceOrAddress = 6;
    internal const int Busy = 16;
    internal const int InvalidArgument = 22;

    internal const short PollIn = 1;
    internal const int NonBlockingCloseOnExec = 0x80800;

    /// <summary>Asks the kernel for something. Allocates nothing unless it refuses.</summary>
    /// <param name="file">Of whom.</param>
    /// <param name="request">The request's code.</param>
    /// <param name="argument">Its structure, which the kernel may fill.</param>
    /// <param name="subject">Whom it is about, for the message.</param>
    /// <param name="failing">What a refusal means, such as <c>cannot be read</c>.</param>
    /// <exception cref="IOException">The kernel refused; the message ends with its reason, and HResult is the error number.</exception>
    internal static void Control<T>(SafeFileHandle file, uint request, ref T argument, string subject, string failing)
        where T : unmanaged
    {
        fixed (T* pointer = &argument)
        {
            if (ioctl(file, request, pointer) < 0)
            {
                throw Failure($"{subject} {failing}");
            }
        }
    }

    /// <summary>The failure of the last call, in words.</summary>
    internal static IOException Failure(string what)
    {
        var error = Marshal.GetLastPInvokeError();
        return new IOException($"{what}: {Marshal.GetPInvokeErrorMessage(error)}", error);
    }

    /// <summary>A name that the kernel keeps in a field of fixed length.</summary>
    internal static string Text(byte* field)
    {
        var bytes = new ReadOnlySpan<byte>(field, KernelGpio.NameLength);
        var end = bytes.IndexOf((byte)0);
        return Encoding.UTF8.GetString(end < 0 ? bytes : bytes[..end]);
    }

    [LibraryImport("libc", SetLastError = true)]
    private static partial int ioctl(SafeFileHandle file, nuint request, void* argument);

    [LibraryImport("libc", EntryPoint = "poll", SetLastError = true)]
    internal static partial int Poll(PollEntry* entries, nuint count, int timeoutMs);

    [LibraryImport("libc", EntryPoint = "read", SetLastError = true)]
    internal static partial nint Read(SafeFileHandle file, void* buffer, nuint length);

    [LibraryImport("libc", EntryPoint = "write", SetLastError = true)]
    internal static partial nint Write(SafeFileHandle file, void* buffer, nuint length);

    [LibraryImport("libc", EntryPoint = "eventfd", SetLastError = true)]
    internal static partial int EventFd(uint initial, int flags);
}

/// <summary><c>struct pollfd</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct PollEntry
{
    internal int FileDescriptor;
    internal short Events;
    internal short ReturnedEvents;
}
