namespace RackController.Page;

/// <summary>Writes files so that a power cut leaves the old one or the new one, and never a part.</summary>
internal static class WholeFile
{
    /// <summary>Writes a text beside the file, to the disk, and puts it in its place. The new file may be read by whom the old one let.</summary>
    /// <param name="path">Where.</param>
    /// <param name="text">What.</param>
    /// <exception cref="IOException">It cannot be written; the old one is still there.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; the old one is still there.</exception>
    public static void Write(string path, string text)
    {
        // Through a link to where the file really is: the link stays.
        var target = File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
        var beside = target + ".new";
        using (var stream = new FileStream(beside, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            using var writer = new StreamWriter(stream);
            writer.Write(text);
            writer.Flush();
            stream.Flush(flushToDisk: true);
        }

        if (File.Exists(target) && !OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(beside, File.GetUnixFileMode(target));
        }

        File.Move(beside, target, overwrite: true);
        FlushFolder(Path.GetDirectoryName(Path.GetFullPath(target))!);
    }

    // The name of the file is on the disk only once its folder is.
    private static void FlushFolder(string folder)
    {
        using var handle = File.OpenHandle(folder);
        RandomAccess.FlushToDisk(handle);
    }
}
