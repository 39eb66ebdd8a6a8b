using System.Xml.Linq;

namespace RackController.Conventions.Docs;

public sealed class PackageTests
{
    private static IEnumerable<string> Pinned =>
        from pin in XDocument.Load(Repository.PathOf("Directory.Packages.props")).Descendants("PackageVersion")
        select pin.Attribute("Include")!.Value;

    [Fact]
    public void EveryPinnedPackageIsUsed()
    {
        var files = Repository.Projects.Append("src/Directory.Build.props").Append("tests/Directory.Build.props");
        var used = files.Select(Repository.Read).ToList();
        Verdict.None("Directory.Packages.props pins what no project uses:",
            Pinned.Where(name => !used.Any(text => text.Contains($"PackageReference Include=\"{name}\"", StringComparison.Ordinal))));
    }

    [Fact]
    public void EveryPinnedPackageHasItsReason()
    {
        var page = Repository.Lines("DEVELOPERS.md");
        Verdict.None("DEVELOPERS.md does not say why a package is here:",
            Pinned.Where(name => !page.Any(line => line.Contains($"`{name}`", StringComparison.Ordinal))));
    }

    [Fact]
    public void EveryProjectLocksWhatItRestores() => Verdict.None("Run dotnet restore and commit the lock file:",
        Repository.Projects.Select(project => $"{Path.GetDirectoryName(project)}/packages.lock.json").Where(file => !Repository.Has(file)));

    [Fact]
    public void NoProjectChoosesAVersionByItself() => Verdict.None("Versions stand in Directory.Packages.props:",
        Repository.Projects.Where(project => Repository.Read(project).Contains(" Version=\"", StringComparison.Ordinal)));
}
