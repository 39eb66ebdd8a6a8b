using System.Runtime.InteropServices;
using RackController.Service;

namespace RackController.Page;

/// <summary>Files that only the account of the service may read. A power cut leaves the old one or the new one, and never a part.</summary>
internal static partial class PrivateFile
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    /// <summary>Writes a text in the place of a file.</summary>
    /// <param name="path">Where; its folder is made if need be.</param>
    /// <param name="text">What.</param>
    /// <exception cref="IOException">It cannot be written; the old one is still there.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; the old one is still there.</exception>
    public static void Write(string path, string text)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        Directory.CreateDirectory(folder);
        WholeFile.Write(path, text, isPrivate: true);
        GiveToOwnerOf(folder, path);
    }

    /// <summary>Keeps other processes from changing a file while it is changed here.</summary>
    /// <param name="path">The file; the lock lies beside it.</param>
    /// <exception cref="IOException">Somebody else has held it for five seconds, or it cannot be made.</exception>
    public static FileStream Lock(string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        Directory.CreateDirectory(folder);
        var until = Environment.TickCount64 + (long)Patience.TotalMilliseconds;
        while (true)
        {
            try
            {
                var held = new FileStream(path + ".lock", ForOwnerOnly());
                GiveToOwnerOf(folder, path + ".lock");
                return held;
            }
            catch (IOException) when (Environment.TickCount64 < until)
            {
                Thread.Sleep(Pause);
            }
        }
    }

    private static FileStreamOptions ForOwnerOnly()
    {
        var how = new FileStreamOptions { Mode = FileMode.OpenOrCreate, Access = FileAccess.ReadWrite, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
        {
            how.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        return how;
    }

    // Whoever sets up people with sudo must not leave files that the service cannot read.
    private static unsafe void GiveToOwnerOf(string folder, string file)
    {
        if (!Environment.IsPrivilegedProcess)
        {
            return;
        }

        // struct statx is the same on every machine; its owner and group stand at these places (statx(2)).
        const int size = 256, owner = 20, group = 24;
        var status = stackalloc byte[size];
        if (StatX(CurrentFolder, folder, 0, OwnerAndGroup, status) != 0
            || ChangeOwner(file, *(uint*)(status + owner), *(uint*)(status + group)) != 0)
        {
            throw new IOException($"{file} cannot be given to the owner of its folder ({Marshal.GetLastPInvokeErrorMessage()})");
        }
    }

    private const int CurrentFolder = -100;
    private const uint OwnerAndGroup = 0x18;

    [LibraryImport("libc", EntryPoint = "statx", StringMarshalling = StringMarshalling.Utf8, SetLastError = true)]
    private static unsafe partial int StatX(int folder, string path, int flags, uint mask, byte* status);

    [LibraryImport("libc", EntryPoint = "chown", StringMarshalling = StringMarshalling.Utf8, SetLastError = true)]
    private static partial int ChangeOwner(string path, uint owner, uint group);
}
