using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices.Tests;

public sealed class NoticesFileTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rackcontroller-notices-");

    private string Where => Path.Combine(folder.FullName, "notices.json");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void WhatIsKeptComesBackWhole()
    {
        var kept = new Kept
        {
            Ways = [new WayStatus("mail to grower@home.example", Cellar.Noon, "of a test", Cellar.Noon, 1)],
            Position = new Position(7, Cellar.Noon + Duration.FromNanoseconds(300)),
            Down = new Downtime(AlarmPriority.High, "a0"),
            Alarms = [new KnownAlarm(Cellar.Heat, Cellar.Noon, "33 °C") { ToldIn = "a0", ToldAt = Cellar.Noon, IsReminded = true }],
            Pending =
            [
                new Tiding(TidingKind.Unseen, Cellar.Heat, AlarmPriority.High, Cellar.Noon, "33 °C", Cellar.Noon) { Follows = "a0" },
            ],
            Outbox = [new Letter("b0.1", "mail", "of a test", "What\n", Cellar.Noon) { References = ["a0.1"], Tries = 3 }],
        };
        Assert.Null(new NoticesFile(Where).Write(kept));

        var read = new NoticesFile(Where).Read(Cellar.Noon, out var trouble);

        Assert.Null(trouble);
        Assert.Equal(kept.Ways[0], Assert.Single(read.Ways));
        Assert.Equal((kept.Position, kept.Down), (read.Position, read.Down));
        Assert.Equal(kept.Alarms[0], Assert.Single(read.Alarms));
        Assert.Equal(kept.Pending[0], Assert.Single(read.Pending));
        var letter = Assert.Single(read.Outbox);
        Assert.Equal("a0.1", Assert.Single(letter.References));
        Assert.Equal(kept.Outbox[0], letter with { References = kept.Outbox[0].References });
        Assert.Equal(kept.Ways[0], Assert.Single(NoticesStatus.Read(Where)!.Ways));
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{")]
    [InlineData("""{ "position": { "number": "seven", "wall": "noon" } }""")]
    public void WhatMakesNoSenseIsPutAsideAndToldOf(string text)
    {
        File.WriteAllText(Where, text);

        var read = new NoticesFile(Where).Read(Cellar.Noon, out var trouble);

        Assert.Null(read.Position);
        Assert.Contains("made no sense", trouble, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(Assert.Single(folder.GetFiles("*-unreadable")).FullName));
    }

    [Fact]
    public void WhatHasNotChangedIsNotWrittenAgain()
    {
        var file = new NoticesFile(Where);
        Assert.Null(file.Write(new Kept()));
        File.Delete(Where);

        Assert.Null(file.Write(new Kept()));
        Assert.False(File.Exists(Where));
    }

    [Fact]
    public void WhatCannotBeWrittenIsSaidWithWhatMayComeOfIt() => Assert.Contains(
        "something may be told twice", new NoticesFile(Path.Combine(folder.FullName, "not-there", "notices.json")).Write(new Kept()),
        StringComparison.Ordinal);
}
