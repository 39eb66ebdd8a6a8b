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
    [InlineData("check", "")]
    [InlineData("run", "")]
    [InlineData("run", "--speed", "0")]
    [InlineData("run", "--speed", "fast")]
    [InlineData("run", "--page", "nowhere")]
    [InlineData("campaign", "a", "--seed", "x")]
    [InlineData("campaign", "a", "--days", "x")]
    [InlineData("campaign", "a", "--quiet-years", "0.2")]
    [InlineData("campaign", "a", "--only", "light-leaks")]
    [InlineData("day", "a", "--date", "9999-12-31")]
    [InlineData("why", "a", "--at", "1066-10-14T09:00")]
    public void WrongUseExitsWith2AndALineThatNamesTheHelp(params string[] args)
    {
        var answer = Prompt.Run(args);
        Assert.Equal(2, answer.ExitCode);
        Assert.Empty(answer.Output);
        Assert.All(answer.Error.TrimEnd().Split('\n'), line => Assert.EndsWith("--help", line, StringComparison.Ordinal));
        Assert.DoesNotContain("System.", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AnAnswerThatCannotBeWrittenIsOneLineAndExitCode3()
    {
        using var full = new FullDisk();
        using var error = new StringWriter();

        Assert.Equal(3, CommandLine.Run(["check", Prompt.DemoRack], full, error));
        var line = Assert.Single(error.ToString().TrimEnd().Split('\n'));
        Assert.StartsWith("the answer cannot be written (No space left on device)", line, StringComparison.Ordinal);
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

    private sealed class FullDisk : StringWriter
    {
        public override void Write(string? value) => throw new IOException("No space left on device");

        public override void Write(char[] buffer, int index, int count) => Write("");

        public override void Write(char value) => Write("");
    }
}
