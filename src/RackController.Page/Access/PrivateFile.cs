using RackController.Service;

namespace RackController.Page;

/// <summary>Files that only the account of the service may read. A power cut leaves the old one or the new one, and never a part.</summary>
internal static class PrivateFile
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
        FolderOwner.Give(folder, path);
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
                FolderOwner.Give(folder, path + ".lock");
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
}
