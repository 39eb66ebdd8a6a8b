using System.Runtime.InteropServices;

namespace RackController.Service;

/// <summary>Gives files that somebody made with sudo to the account of the service: it must be able to read and write what is put into
/// its folder.</summary>
public static partial class FolderOwner
{
    private const int CurrentFolder = -100;
    private const uint OwnerAndGroup = 0x18;

    /// <summary>Gives a file to whoever its folder belongs to; nothing where this account may not give anything away.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="file">The path of the file.</param>
    /// <exception cref="IOException">It cannot be given.</exception>
    public static unsafe void Give(string folder, string file)
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

    [LibraryImport("libc", EntryPoint = "statx", StringMarshalling = StringMarshalling.Utf8, SetLastError = true)]
    private static unsafe partial int StatX(int folder, string path, int flags, uint mask, byte* status);

    [LibraryImport("libc", EntryPoint = "chown", StringMarshalling = StringMarshalling.Utf8, SetLastError = true)]
    private static partial int ChangeOwner(string path, uint owner, uint group);
}
