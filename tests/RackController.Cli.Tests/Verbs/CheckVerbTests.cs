using RackController.Cli.Tests.Support;
using RackController.Testing;

namespace RackController.Cli.Tests.Verbs;

public sealed class CheckVerbTests
{
    [Fact]
    public void ARackFileThatIsRightIsSummedUpAsApproved()
    {
        var answer = Prompt.Run("check", Prompt.DemoRack);
        Assert.Equal(0, answer.ExitCode);
        Approved.Matches("check-rack", answer.Output.Replace(Prompt.DemoRack, "FILE", StringComparison.Ordinal));
    }

    [Fact]
    public void ARackWhoseUpperTiersStarveIsToldWhatToChangeAsApproved()
    {
        using var starved = new StarvedRack();
        var answer = Prompt.Run("check", starved.File);
        Assert.Equal(0, answer.ExitCode);
        Approved.Matches("check-starved-rack", answer.Output.Replace(starved.File, "FILE", StringComparison.Ordinal));
    }

    [Fact]
    public void AScenarioThatIsRightIsSummedUpAsApproved()
    {
        var file = Prompt.Scenario("float-stuck");
        var answer = Prompt.Run("check", file);
        Assert.Equal(0, answer.ExitCode);
        Approved.Matches("check-scenario", answer.Output.Replace(file, "FILE", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("demo-orders", "It is an orders file for Cedar Fork basement, ")]
    [InlineData("crops", "It is a crops file of ")]
    public void FilesOfAPlanAreJudgedAndSummedUp(string name, string said)
    {
        var file = ShippedFiles.PathTo($"config/{name}.yaml");

        var answer = Prompt.Run("check", file);

        Assert.Equal(0, answer.ExitCode);
        Assert.StartsWith($"{file} is right.\n{said}", answer.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("crops: [{ name: moss }]", "the crop `moss` lacks `kind`")]
    [InlineData("work-days: [mon]\nracks: none.yaml\nblackout: { trays: 3 }", "nothing is ordered")]
    public void MistakesInThemAreThoseOfTheirOwnReaders(string text, string complaint)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, text);

            var answer = Prompt.Run("check", file);

            Assert.Equal(1, answer.ExitCode);
            Assert.Contains(complaint, answer.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("rack file", answer.Output, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("site: 3\nracks: none\n")]
    [InlineData("expect: nothing\n")]
    [InlineData("\0binary")]
    [InlineData("a: &a [1]\nb: *a\n")]
    public void AFileThatIsWrongExitsWith1AndOnlyLinesWithAPlace(string text)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, text);
            var answer = Prompt.Run("check", file);
            Assert.Equal(1, answer.ExitCode);
            Assert.All(
                answer.Output.TrimEnd().Split('\n'),
                line => Assert.Matches(@"^[^:]+:\d+:\d+: [^:]+: .+$", line));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void AMissingFileAndADirectoryExitWith3()
    {
        Assert.Equal(3, Prompt.Run("check", "no-such-file.yaml").ExitCode);
        Assert.Equal(3, Prompt.Run("check", Path.GetTempPath()).ExitCode);
    }
}
