using System.Runtime.Versioning;

namespace RackController.Service.Tests;

[SupportedOSPlatform("linux")]
public sealed class WholeFileTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void WhatIsWrittenIsTheWholeFileAndNothingLiesBeside()
    {
        var path = folder.File("it");
        File.WriteAllText(path, "a much longer text than the new one\n");

        WholeFile.Write(path, "new\n");

        Assert.Equal("new\n", File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void WhoMayReadItStaysAsItWas()
    {
        var path = folder.File("it");
        File.WriteAllText(path, "old\n");
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);

        WholeFile.Write(path, "new\n");

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
    }

    [Fact]
    public void AFileBehindALinkIsReplacedAndTheLinkStays()
    {
        var (real, link) = (folder.File("real"), folder.File("link"));
        File.WriteAllText(real, "old\n");
        File.CreateSymbolicLink(link, real);

        WholeFile.Write(link, "new\n");

        Assert.Equal("new\n", File.ReadAllText(real));
        Assert.NotNull(new FileInfo(link).LinkTarget);
    }

    [Fact]
    public void WhatCannotBeWrittenLeavesTheFileAsItWas()
    {
        var path = folder.File("it");
        File.WriteAllText(path, "old\n");
        Directory.CreateDirectory(path + ".new");

        Assert.Throws<UnauthorizedAccessException>(() => WholeFile.Write(path, "new\n"));

        Assert.Equal("old\n", File.ReadAllText(path));
    }

    [Fact]
    public void WhatCannotBePutInPlaceLeavesTheFileAsItWas()
    {
        var path = folder.File("it");
        Directory.CreateDirectory(path);
        File.WriteAllText(Path.Combine(path, "inside"), "old\n");

        Assert.ThrowsAny<SystemException>(() => WholeFile.Write(path, "new\n"));

        Assert.Equal("old\n", File.ReadAllText(Path.Combine(path, "inside")));
    }
}
