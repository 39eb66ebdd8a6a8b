using System.CommandLine;
using RackController.Cli.Tests.Support;

namespace RackController.Cli.Tests.Verbs;

public sealed class CauseAndEffectVerbTests
{
    [Theory]
    [InlineData("table", "high-water ")]
    [InlineData("markdown", "| `high-water` |")]
    [InlineData("html", "<td>high-water</td>")]
    public void EveryFormShowsTheRows(string form, string shown)
    {
        var answer = Prompt.Run("cause-and-effect", Prompt.DemoRack, "--as", form);
        Assert.Equal(0, answer.ExitCode);
        Assert.Contains(shown, answer.Output, StringComparison.Ordinal);
        Assert.Contains("Mains power and water together can kill.", answer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AnUnknownFormIsWrongUse()
    {
        var answer = Prompt.Run("cause-and-effect", Prompt.DemoRack, "--as", "pdf");
        Assert.Equal(2, answer.ExitCode);
        Assert.Equal(
            $"--as takes table, markdown or html: see {RootCommand.ExecutableName} cause-and-effect --help", answer.Error.TrimEnd());
    }
}
