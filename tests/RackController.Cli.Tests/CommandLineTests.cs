using RackController.Cli.Tests.Support;

namespace RackController.Cli.Tests;

public sealed class CommandLineTests
{
    [Theory]
    [InlineData("wat")]
    [InlineData("bench")]
    [InlineData("check")]
    [InlineData("day", "FILE")]
    [InlineData("check", "a", "b")]
    [InlineData("bench", "a", "--outt", "b")]
    public void WrongUseExitsWith2AndALineThatNamesTheHelp(params string[] args)
    {
        var answer = Prompt.Run(args);
        Assert.Equal(2, answer.ExitCode);
        Assert.Empty(answer.Output);
        Assert.All(answer.Error.TrimEnd().Split('\n'), line => Assert.EndsWith("--help", line, StringComparison.Ordinal));
    }

    [Fact]
    public void HelpNamesEveryVerb()
    {
        var answer = Prompt.Run("--help");
        Assert.Equal(0, answer.ExitCode);
        Assert.All(
            (string[])["run", "bench", "check", "day", "why"],
            verb => Assert.Contains($"  {verb} ", answer.Output, StringComparison.Ordinal));
    }
}
