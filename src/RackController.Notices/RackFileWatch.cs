namespace RackController.Notices;

/// <summary>Notices that somebody has changed a file.</summary>
/// <param name="path">The file.</param>
internal sealed class RackFileWatch(string path)
{
    private (DateTime Written, long Length)? seen = Look(path);

    /// <summary>Whether it was changed since this was asked last. A file that is not there has not been: it is being put in
    /// place.</summary>
    public bool HasChanged()
    {
        var before = seen;
        seen = Look(path) ?? before;
        return seen != before;
    }

    private static (DateTime Written, long Length)? Look(string path)
    {
        var file = new FileInfo(path);
        return file.Exists ? (file.LastWriteTimeUtc, file.Length) : null;
    }
}
