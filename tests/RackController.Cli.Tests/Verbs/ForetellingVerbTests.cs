using System.CommandLine;
using RackController.Cli.Tests.Support;

namespace RackController.Cli.Tests.Verbs;

public sealed class ForetellingVerbTests
{
    [Theory]
    [InlineData("2026-03-29")]
    [InlineData("2026-10-25")]
    [InlineData("2026-03-02")]
    public void ADayReadsAsApproved(string date)
    {
        var answer = Prompt.Run("day", Prompt.DemoRack, "--date", date);
        Assert.Equal(0, answer.ExitCode);
        Approved.Matches($"day-{date}", answer.Output);
    }

    [Theory]
    [InlineData("2026-03-29T01:30", "why-skipped-time")]
    [InlineData("2026-10-25T01:30", "why-time-that-comes-twice")]
    [InlineData("2026-03-02T07:03", "why-in-a-flood")]
    [InlineData("2026-03-02T07:12", "why-after-a-flood")]
    public void AWhyReadsAsApproved(string at, string name)
    {
        var answer = Prompt.Run("why", Prompt.DemoRack, "--at", at);
        Assert.Equal(0, answer.ExitCode);
        Approved.Matches(name, answer.Output);
    }

    [Theory]
    [InlineData("day", "--date", "29.3.2026", "--date takes a date such as 2026-03-29")]
    [InlineData("day", "--date", "2026-02-30", "--date takes a date such as 2026-03-29")]
    [InlineData("why", "--at", "noon", "--at takes a local date and time such as 2026-03-29T01:30")]
    public void AWrongDateIsWrongUse(string verb, string option, string value, string advice)
    {
        var answer = Prompt.Run(verb, Prompt.DemoRack, option, value);
        Assert.Equal(2, answer.ExitCode);
        Assert.Equal($"{advice}: see {RootCommand.ExecutableName} {verb} --help", answer.Error.TrimEnd());
    }

    [Theory]
    [InlineData("day", "--date", "2026-03-29")]
    [InlineData("why", "--at", "2026-03-29T01:30")]
    public void AScenarioInThePlaceOfARackFileIsRecognised(string verb, string option, string value)
    {
        var answer = Prompt.Run(verb, Prompt.Scenario("first-week"), option, value);
        Assert.Equal(1, answer.ExitCode);
        Assert.Contains("this is a scenario, and a rack file belongs here", answer.Error, StringComparison.Ordinal);
    }
}
