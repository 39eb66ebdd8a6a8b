using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace RackController.Service;

/// <summary>
/// Held by the one process that drives a rack. The kernel lets go of it when the process ends in whatever way, so that no stale
/// lock can keep a rack undriven.
/// </summary>
internal sealed class RackLock : IDisposable
{
    private readonly SafeFileHandle handle;

    private RackLock(SafeFileHandle handle) => this.handle = handle;

    /// <summary>Takes the lock.</summary>
    /// <param name="path">The lock file; it is made when it is not there, and stays.</param>
    /// <exception cref="CouldNotRunException">Another process holds it.</exception>
    /// <exception cref="IOException">The file cannot be made or locked.</exception>
    public static RackLock Take(string path)
    {
        var descriptor = LibC.Open(path, LibC.OpenReadWriteCreateCloseOnExec, 0b110_100_100);
        if (descriptor < 0)
        {
            throw new IOException($"{path}: {Marshal.GetLastPInvokeErrorMessage()}");
        }

        var handle = new SafeFileHandle(descriptor, ownsHandle: true);
        if (LibC.FLock(descriptor, LibC.LockExclusiveNonBlocking) == 0)
        {
            TryNoteHolder(handle);
            return new RackLock(handle);
        }

        var error = Marshal.GetLastPInvokeError();
        using (handle)
        {
            throw error == LibC.WouldBlock
                ? new CouldNotRunException($"{path}: process {Holder(handle)} already drives this rack: stop that one first, "
                    + "or give this one a state folder of its own with --state if it drives another rack")
                : new IOException($"{path}: {Marshal.GetPInvokeErrorMessage(error)}");
        }
    }

    public void Dispose() => handle.Dispose();

    /// <summary>Who holds the lock is written down for people only: a full disk does not take the lock away.</summary>
    private static bool TryNoteHolder(SafeFileHandle handle)
    {
        try
        {
            RandomAccess.SetLength(handle, 0);
            RandomAccess.Write(handle, Encoding.ASCII.GetBytes($"{Environment.ProcessId}\n"), 0);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static string Holder(SafeFileHandle handle)
    {
        Span<byte> text = stackalloc byte[20];
        var length = RandomAccess.Read(handle, text, 0);
        var pid = Encoding.ASCII.GetString(text[..length]).Trim();
        return pid.Length > 0 ? pid : "(unknown)";
    }
}
