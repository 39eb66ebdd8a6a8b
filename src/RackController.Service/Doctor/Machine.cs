namespace RackController.Service;

/// <summary>What the files of a machine say about it. A file that is not there, or may not be read, says nothing.</summary>
/// <param name="root">The folder that holds its file system; <c>/</c> for this machine.</param>
internal sealed class Machine(string root)
{
    /// <summary>The lines of a file; none where it says nothing.</summary>
    /// <param name="path">Its path from the root, without a leading slash.</param>
    public IReadOnlyList<string> Lines(string path)
    {
        try
        {
            return File.ReadAllLines(Path.Combine(root, path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    /// <summary>The first line of a file; empty where it says nothing.</summary>
    /// <param name="path">Its path from the root, without a leading slash.</param>
    public string Line(string path) => Lines(path) is [var first, ..] ? first.Trim() : "";

    /// <summary>Whether a file or folder is there.</summary>
    /// <param name="path">Its path from the root, without a leading slash.</param>
    public bool Has(string path) => Path.Exists(Path.Combine(root, path));

    /// <summary>The paths of the folders in a folder, in order, from the root.</summary>
    /// <param name="path">The folder's path from the root, without a leading slash.</param>
    public IReadOnlyList<string> Folders(string path)
    {
        var folder = Path.Combine(root, path);
        return Directory.Exists(folder)
            ? [.. Directory.GetDirectories(folder).Order(StringComparer.Ordinal).Select(found => Path.GetRelativePath(root, found))]
            : [];
    }

    /// <summary>Whether this account may read and write a file.</summary>
    /// <param name="path">Its path from the root, without a leading slash.</param>
    public bool MayUse(string path)
    {
        try
        {
            using var file = new FileStream(Path.Combine(root, path), FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
