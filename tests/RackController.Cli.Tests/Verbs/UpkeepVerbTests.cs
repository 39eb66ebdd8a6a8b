using RackController.Cli.Tests.Support;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Cli.Tests.Verbs;

public sealed class UpkeepVerbTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("upkeep-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void ARackThatWasNeverDrivenSaysHowOftenAndNothingIsDue()
    {
        var answer = Prompt.Run("upkeep", Prompt.DemoRack, "--state", folder.FullName);

        Assert.Equal(0, answer.ExitCode);
        Assert.Contains("every 50 floods or 14 days", answer.Output, StringComparison.Ordinal);
        Assert.EndsWith("6 works of upkeep, 0 due, 0 of them overdue\n", answer.Output, StringComparison.Ordinal);
        Assert.Empty(folder.GetFiles());
    }

    [Fact]
    public void WhatIsDoneIsPutDownUnderTheNameOfWhoSaysSo()
    {
        var answer = Run("--done", "screen", "--rack", "north", "--note", "roots again");

        Assert.Equal((0, "screen of north is put down as done\n", ""), (answer.ExitCode, answer.Output, answer.Error));
        var site = RackFileReader.Read(Prompt.DemoRack).Site!;
        var done = Assert.Single(new BookDesk(new StateFolder(folder.FullName).Book, site).Look().Upkeep);
        Assert.Equal(("screen", "north", "roots again"), (done.Work, done.Rack, done.Note));
        Assert.EndsWith(" at the terminal", done.By, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, "--done and --rack go together", "--done", "screen")]
    [InlineData(2, "--done and --rack go together", "--note", "x")]
    [InlineData(3, "did you mean `north`?", "--done", "screen", "--rack", "norht")]
    [InlineData(3, "north has no work `scren`: did you mean `screen`?", "--done", "scren", "--rack", "north")]
    public void AMistakeIsToldInOneLine(int code, string words, params string[] arguments)
    {
        var answer = Run(arguments);

        Assert.Equal(code, answer.ExitCode);
        Assert.Contains(words, answer.Error, StringComparison.Ordinal);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
        Assert.Empty(folder.GetFiles());
    }

    [Theory]
    [InlineData("journal.db", "the journal cannot be read")]
    [InlineData("book.db", "the growing book cannot be used")]
    public void AFileThatCannotBeReadIsSaidSo(string file, string words)
    {
        File.WriteAllText(Path.Combine(folder.FullName, file), new string('x', 4096));

        var answer = file == "book.db" ? Run("--done", "screen", "--rack", "north") : Run();

        Assert.Equal(3, answer.ExitCode);
        Assert.Contains(words, answer.Error, StringComparison.Ordinal);
    }

    private Answer Run(params string[] arguments) => Prompt.Run(["upkeep", Prompt.DemoRack, "--state", folder.FullName, .. arguments]);
}
