using System.Globalization;
using NodaTime;

namespace RackController.Service;

/// <summary>
/// Memory that only the start needed, or somebody who asked for something. The kernel maps 64 kB of the program's files around each page
/// that is touched, the start touches most of them, and nothing unmaps them again while there is memory: a quarter of what the service
/// has would be there for its start only. Once all are let go of, those that are used come back, and the kernel may take the others first.
/// </summary>
public static class UnusedMemory
{
    /// <summary>How long after the start there is much to let go of, and how often later.</summary>
    public static readonly (Duration First, Duration Later) Due = (Duration.FromMinutes(1), Duration.FromHours(1));

    /// <summary>Lets go of it. Every thread waits for some milliseconds.</summary>
    /// <returns>Why more stays in memory than is used; null where it does not.</returns>
    public static string? LetGo()
    {
        // The heap first: to collect it reads much of the program.
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        try
        {
            LetGoOfFiles();
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"more stays in memory than is used: {e.Message}";
        }
    }

    /// <summary>Lets go of the pages of the program's files that are nothing but what the file says. What is used next is found in the
    /// kernel's cache, some microseconds for each 64 kB.</summary>
    /// <returns>How many bytes of addresses were let go of.</returns>
    /// <exception cref="IOException">The kernel does not tell what is mapped.</exception>
    internal static long LetGoOfFiles()
    {
        var bytes = 0L;
        var folder = Path.GetDirectoryName(Environment.ProcessPath) ?? throw new IOException("the program does not know where it lies");

        // All are found first: to look for one would bring back another.
        foreach (var (start, end) in AsInTheFile(File.ReadLines("/proc/self/smaps"), folder).ToArray())
        {
            if (LibC.MAdvise((nint)start, (nuint)(end - start), LibC.DontNeed) == 0)
            {
                bytes += (long)(end - start);
            }
        }

        return bytes;
    }

    /// <summary>Which stretches are mapped from files of a folder, cannot be written, and have no page that was ever changed: the linker
    /// writes into some before it closes them, and what it wrote is nowhere else.</summary>
    /// <param name="smaps">What the kernel says, see <c>proc_pid_smaps(5)</c>.</param>
    /// <param name="folder">The folder.</param>
    internal static IEnumerable<(ulong Start, ulong End)> AsInTheFile(IEnumerable<string> smaps, string folder)
    {
        (ulong Start, ulong End)? candidate = null;
        foreach (var line in smaps)
        {
            if (line is [>= '0' and <= '9' or >= 'a' and <= 'f', ..])
            {
                candidate = Candidate(line, folder);
            }
            else if (candidate is { } found && line.StartsWith("Anonymous:", StringComparison.Ordinal))
            {
                candidate = null;
                if (line.AsSpan("Anonymous:".Length).Trim() is "0 kB")
                {
                    yield return found;
                }
            }
        }
    }

    // 00404000-01156000 r-xp 00004000 fe:00 11722793      /usr/lib/rackcontroller/rackcontroller-service
    private static (ulong Start, ulong End)? Candidate(string line, string folder)
    {
        var fields = line.Split(' ', 6, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return fields is [var addresses, ['r', '-', _, 'p'], _, _, _, var file]
            && Path.GetDirectoryName(file) == folder
            && addresses.Split('-') is [var start, var end]
            && ulong.TryParse(start, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var from)
            && ulong.TryParse(end, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var to)
            ? (from, to)
            : null;
    }
}
