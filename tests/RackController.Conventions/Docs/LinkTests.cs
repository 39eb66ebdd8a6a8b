using System.Text.RegularExpressions;

namespace RackController.Conventions.Docs;

public sealed partial class LinkTests
{
    [Fact]
    public void EveryLinkLeadsSomewhere() => Verdict.None("A link leads to nothing:",
        from page in Repository.Pages
        from match in Link().Matches(Repository.Read(page))
        let target = match.Groups["target"].Value
        where !target.Contains("://", StringComparison.Ordinal) && !Resolves(page, target)
        select $"{page}: {target}");

    [Fact]
    public void EveryPathInQuotesIsThere() => Verdict.None("A page names a file or folder that is not there:",
        from page in Repository.Pages
        from match in QuotedPath().Matches(Repository.Read(page))
        let path = match.Groups["path"].Value
        where !Repository.Has(path)
        select $"{page}: {path}");

    private static bool Resolves(string page, string target)
    {
        var parts = target.Split('#', 2);
        var folder = Path.GetDirectoryName(page) ?? "";
        var file = parts[0].Length == 0 ? page : Path.GetRelativePath(Repository.Root, Repository.PathOf(Path.Combine(folder, parts[0])));
        return Repository.Has(file) && (parts.Length == 1 || Anchors(file).Contains(parts[1]));
    }

    // The anchor of a heading: lower case, blanks to hyphens, everything else but letters, digits, hyphens dropped.
    private static IEnumerable<string> Anchors(string page) =>
        from line in Repository.Lines(page)
        where line.StartsWith('#')
        select Dropped().Replace(line.TrimStart('#').Trim().ToLowerInvariant().Replace(' ', '-'), "");

    [GeneratedRegex("""(?<!!)\[[^\]]+\]\((?<target>[^)\s]+)\)""")]
    private static partial Regex Link();

    [GeneratedRegex("""`(?<path>(src|tests|config|deploy|hardware-notes)/[\w./-]*\w)`""")]
    private static partial Regex QuotedPath();

    [GeneratedRegex("""[^\w-]""")]
    private static partial Regex Dropped();
}
