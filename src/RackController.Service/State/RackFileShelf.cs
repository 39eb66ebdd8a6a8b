using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;

namespace RackController.Service;

/// <summary>The rack file, and the versions that it had before: what is put in its place is written whole or not at all, and what it
/// replaces is kept.</summary>
/// <param name="file">The path of the rack file.</param>
/// <param name="versions">The folder of earlier versions.</param>
public sealed class RackFileShelf(string file, string versions)
{
    /// <summary>How many earlier versions are kept.</summary>
    public const int Kept = 20;

    private static readonly InstantPattern nameOfTime = InstantPattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss");

    /// <summary>The name of the file, without its folder.</summary>
    public string Name => Path.GetFileName(file);

    /// <summary>What the file says now.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public string Read() => File.ReadAllText(file);

    /// <summary>The earlier versions, newest first.</summary>
    public ImmutableArray<KeptVersion> Versions() => Directory.Exists(versions)
        ?
        [
            .. Directory.EnumerateFiles(versions, "*.yaml")
                .Select(path => (path, time: nameOfTime.Parse(Path.GetFileNameWithoutExtension(path))))
                .Where(version => version.time.Success)
                .OrderByDescending(version => version.time.Value)
                .Select(version => new KeptVersion(version.path, version.time.Value)),
        ]
        : [];

    /// <summary>Puts a text in the place of the file, and keeps what it replaces.</summary>
    /// <param name="text">The text.</param>
    /// <param name="now">The present time, which names what is kept.</param>
    /// <param name="keepsOld">Whether what it replaces is kept.</param>
    /// <exception cref="IOException">It cannot be written; nothing was changed.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; nothing was changed.</exception>
    public void Replace(string text, Instant now, bool keepsOld = true)
    {
        if (keepsOld)
        {
            Directory.CreateDirectory(versions);
            WholeFile.Write(Path.Combine(versions, nameOfTime.Format(now) + ".yaml"), Read());
        }

        WholeFile.Write(file, text);
        foreach (var old in Versions().Skip(Kept))
        {
            File.Delete(old.Path);
        }
    }
}

/// <summary>An earlier version of the rack file.</summary>
/// <param name="Path">Where it is kept.</param>
/// <param name="Until">When it was replaced.</param>
public sealed record KeptVersion(string Path, Instant Until)
{
    /// <summary>Its name in an address.</summary>
    public string Key => System.IO.Path.GetFileNameWithoutExtension(Path);
}
