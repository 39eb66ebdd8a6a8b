using System.Runtime.InteropServices;

namespace RackController.Service;

/// <summary>Writes files so that a power cut leaves the old one or the new one, and never a part.</summary>
public static class WholeFile
{
    /// <summary>Writes a text beside the file, to the disk, and puts it in its place. Whom the old file let read may read the new
    /// one.</summary>
    /// <param name="path">Where.</param>
    /// <param name="text">What.</param>
    /// <param name="isPrivate">Whether nobody but this account may ever read it.</param>
    /// <exception cref="IOException">It cannot be written; the old one is still there.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; the old one is still there.</exception>
    public static void Write(string path, string text, bool isPrivate = false)
    {
        ArgumentNullException.ThrowIfNull(path);

        // Through a link to where the file really is: the link stays.
        var target = (File.Exists(path) ? File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName : null) ?? path;
        var beside = target + ".new";
        var how = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write, Share = FileShare.None };
        if (isPrivate && !OperatingSystem.IsWindows())
        {
            how.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using (var stream = new FileStream(beside, how))
        {
            using var writer = new StreamWriter(stream);
            writer.Write(text);
            writer.Flush();
            stream.Flush(flushToDisk: true);
        }

        if (!isPrivate && File.Exists(target) && !OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(beside, File.GetUnixFileMode(target));
        }

        File.Move(beside, target, overwrite: true);
        FlushFolder(Path.GetDirectoryName(Path.GetFullPath(target))!);
    }

    // The name of the file is on the disk only once its folder is.
    private static void FlushFolder(string folder)
    {
        var descriptor = LibC.Open(folder, LibC.OpenFolderCloseOnExec, 0);
        if (descriptor < 0)
        {
            throw new IOException($"{folder} cannot be opened to write its names to the disk (error {Marshal.GetLastPInvokeError()})");
        }

        var done = LibC.FSync(descriptor);
        var error = Marshal.GetLastPInvokeError();
        _ = LibC.Close(descriptor);
        if (done != 0)
        {
            throw new IOException($"the names in {folder} cannot be written to the disk (error {error})");
        }
    }
}
