using NodaTime;

namespace RackController.Service.Tests;

public sealed class RackFileShelfTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rackcontroller-shelf-");
    private readonly RackFileShelf shelf;
    private Instant now = Instant.FromUtc(2027, 1, 15, 11, 0);

    public RackFileShelfTests()
    {
        File.WriteAllText(RackFile, "first\n");
        shelf = new RackFileShelf(RackFile, Path.Combine(folder.FullName, "versions"));
    }

    private string RackFile => Path.Combine(folder.FullName, "rack.yaml");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void WhatIsReplacedIsKept()
    {
        Replace("second\n");
        Replace("third\n");

        Assert.Equal("third\n", shelf.Read());
        Assert.Equal(["second\n", "first\n"], shelf.Versions().Select(kept => File.ReadAllText(kept.Path)));
    }

    [Fact]
    public void OnlyTheNewestAreKept()
    {
        for (var i = 0; i < RackFileShelf.Kept + 5; i++)
        {
            Replace($"{i}\n");
        }

        Assert.Equal(RackFileShelf.Kept, shelf.Versions().Length);
        Assert.Equal($"{RackFileShelf.Kept + 3}\n", File.ReadAllText(shelf.Versions()[0].Path));
    }

    [Fact]
    public void WhatCannotBeWrittenLeavesTheFileAsItWas()
    {
        Directory.CreateDirectory(RackFile + ".new");

        Assert.ThrowsAny<Exception>(() => Replace("second\n"));

        Assert.Equal("first\n", shelf.Read());
    }

    private void Replace(string text)
    {
        now += Duration.FromMinutes(1);
        shelf.Replace(text, now);
    }
}
