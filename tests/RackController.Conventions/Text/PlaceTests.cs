using System.Text.RegularExpressions;

namespace RackController.Conventions.Text;

/// <summary>Nothing in the repository depends on, or tells of, the machine or the network it was written on.</summary>
public sealed partial class PlaceTests
{
    // The folders that every Linux system has, and the one that the lab's guest adds; a path below any other is somebody's own.
    private static readonly string[] SystemFolders =
        ["bin", "boot", "dev", "etc", "lab", "lib", "mnt", "opt", "proc", "run", "sbin", "srv", "sys", "tmp", "usr", "var"];

    // What the page's own addresses begin with; they are no folders.
    private static readonly string[] PageAddresses =
    [
        "alarms", "api", "batches", "files", "floods", "health", "history", "notices", "people", "account", "racks", "schedule",
        "proof-tests", "tune", "upkeep",
    ];

    // Whom the pages point to, and the names that a build or a schema needs. Anything else is a decision to be made here.
    private static readonly string[] KnownHosts =
        ["json-schema.org", "keepachangelog.com", "semver.org", "www.w3.org", "localhost", "127.0.0.1", "dot.net", "dotnet.microsoft.com",
            "www.debian.org"];

    [Fact]
    public void NoPathLeadsIntoSomebodysOwnMachine() => Verdict.None(
        "Paths are relative, or below a folder that every system has:",
        from place in Places(AbsolutePath())
        let root = place.Match.Groups["root"].Value
        where !SystemFolders.Contains(root) && !PageAddresses.Contains(root)
        select place.Finding);

    [Fact]
    public void EveryWebAddressIsOneThatWeChose() => Verdict.None(
        "Add the host to KnownHosts if the product should name it:",
        from place in Places(WebAddress())
        let host = place.Match.Groups["host"].Value
        where !KnownHosts.Contains(host) && !IsFilledIn(host) && !IsForExamples(host)
        select place.Finding);

    // `{name}` in a text that code fills in.
    private static bool IsFilledIn(string host) => host.StartsWith('{');

    // RFC 2606: nobody's, ever.
    private static bool IsForExamples(string host) => host.EndsWith(".example", StringComparison.Ordinal);

    private static IEnumerable<(Match Match, string Finding)> Places(Regex regex) =>
        from file in Repository.TextFiles
        where !file.EndsWith("packages.lock.json", StringComparison.Ordinal)
        from line in Repository.Lines(file).Index()
        from match in regex.Matches(line.Item)
        select (match, $"{file}:{line.Index + 1}: {match.Value}");

    [GeneratedRegex("""(?<=^|[\s"'`(=:])/(?<root>[A-Za-z]\w*)/[\w.]+""")]
    private static partial Regex AbsolutePath();

    [GeneratedRegex("""https?://(?<host>[^\s/:"'<>)\]]+)""")]
    private static partial Regex WebAddress();
}
