using RackController.Cli.Tests.Support;
using RackController.Testing;

namespace RackController.Cli.Tests.Verbs;

public sealed class TuneVerbTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("tune-");
    private readonly string file;
    private readonly string text;

    public TuneVerbTests()
    {
        file = Path.Combine(folder.FullName, "rack.yaml");
        text = File.ReadAllText(ShippedFiles.PathTo("config/demo-two-tier.yaml"));
        File.WriteAllText(file, text);
    }

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void TimesByHandAreFittedAndShownAndWithoutAnswerNothingIsWritten()
    {
        var answer = Tune();

        Assert.Equal((0, ""), (answer.ExitCode, answer.Error));
        Assert.Matches(@"tier 1 +fills to 44\.5 mm +3 +3:10 min +2:\d\d min +3:1\d min", answer.Output);
        Assert.Matches(@"the pump's speed: 0\.8\d\d \+/- 0\.\d\d\d of what is written", answer.Output);
        Assert.Contains("say --write", answer.Output, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(file));
    }

    [Fact]
    public void WhatIsWrittenIsGoneByAndWhatWasThereIsKept()
    {
        Assert.Equal(0, Tune("--write").ExitCode);

        Assert.StartsWith(text.Split("\nio:")[0].TrimEnd(), File.ReadAllText(file), StringComparison.Ordinal);
        var kept = Assert.Single(Directory.GetFiles(Path.Combine(folder.FullName, "state", "rack-file-versions")));
        Assert.Equal(text, File.ReadAllText(kept));
        Assert.Contains("a flood, simulated as measured on ", Prompt.Run("check", file).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ASecondFitSaysWhatOfTheFirstItReplacesBeforeItIsWritten()
    {
        Assert.DoesNotContain("This replaces", Tune("--write").Output, StringComparison.Ordinal);
        var written = File.ReadAllText(file);

        var again = Prompt.Run("tune", file, "--state", State, "--fill", "1=3:10,3:12,3:09", "2=3:24,3:26,3:22");

        var said = again.Output.ReplaceLineEndings(" ");
        Assert.Equal((0, ""), (again.ExitCode, again.Error));
        Assert.Matches(
            @"This replaces what was measured on \d{4}-\d\d-\d\d: the pump's speed, the weep of tier 1, the weep of tier 2, the branch of ",
            said);
        Assert.Contains(
            "Nothing is known any more of the weep of tier 1, the weep of tier 2: the rest of the file holds there.", said,
            StringComparison.Ordinal);
        Assert.True(
            said.IndexOf("This replaces", StringComparison.Ordinal) < said.IndexOf("Nothing was written", StringComparison.Ordinal));
        Assert.Equal(written, File.ReadAllText(file));
    }

    [Fact]
    public void TheTableComparesWithTheFileWithoutWhatWasMeasured()
    {
        var first = Table(Tune("--write").Output);

        Assert.Contains("without `measured`", first[0], StringComparison.Ordinal);
        Assert.Equal(first, Table(Tune().Output));
    }

    [Theory]
    [InlineData("--fill")]
    [InlineData("--drain")]
    public void ADateIsForFloodsOnRecordAndNotForTimesByHand(string times)
    {
        var answer = Prompt.Run("tune", file, "--since", "2026-03-29", times, "1=3:10,3:12,3:09");

        Assert.Equal(2, answer.ExitCode);
        Assert.Contains("--since chooses among floods on record", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void NonsenseIsRefusedInOneLineAndNothingIsWritten()
    {
        var answer = Prompt.Run("tune", file, "--state", State, "--fill", "1=0:10,0:10,0:11", "--write");

        Assert.Equal(1, answer.ExitCode);
        Assert.StartsWith($"{file}: ", answer.Error, StringComparison.Ordinal);
        Assert.Contains("tier 1 cannot have filled in 10 s", answer.Error, StringComparison.Ordinal);
        Assert.Single(answer.Error.TrimEnd().Split('\n'));
        Assert.Equal(text, File.ReadAllText(file));
    }

    [Fact]
    public void WithoutTimesAndWithoutAJournalItSaysHowToGetThem()
    {
        var answer = Prompt.Run("tune", file, "--state", State);

        Assert.Equal(3, answer.ExitCode);
        Assert.Contains(
            "journal.db: there is no journal: flood with `run` first, or say times by hand", answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1=190")]
    [InlineData("1=3:10,")]
    [InlineData("0=3:10")]
    [InlineData("1=3:75")]
    [InlineData("tier 1")]
    public void TimesThatNoStopwatchShowsAreWrongUse(string times)
    {
        var answer = Prompt.Run("tune", file, "--fill", times);

        Assert.Equal(2, answer.ExitCode);
        Assert.Contains("such as 2=3:10,3:14,3:09", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ATierNamedTwiceIsWrongUse() => Assert.Contains(
        "names tier 1 twice", Prompt.Run("tune", file, "--fill", "1=3:10", "1=3:12").Error, StringComparison.Ordinal);

    [Fact]
    public void WhereThereAreSeveralRacksOneIsNamed()
    {
        var answer = Prompt.Run("tune", ShippedFiles.PathTo("config/demo-three-racks.yaml"), "--fill", "1=3:10");

        Assert.Equal(3, answer.ExitCode);
        Assert.Contains("say --rack with one of ", answer.Error, StringComparison.Ordinal);
    }

    private string State => Path.Combine(folder.FullName, "state");

    private static string[] Table(string output) =>
        [.. output.Split('\n').Where(line => line.StartsWith("  tier", StringComparison.Ordinal))];

    private Answer Tune(params string[] more) => Prompt.Run(
    [
        "tune", file, "--state", State, "--fill", "1=3:10,3:12,3:09", "2=3:24,3:26,3:22", "--drain", "1=16:10,16:14,16:05",
        "2=15:40,15:30,15:44", .. more,
    ]);
}
