using RackController.Cli.Tests.Support;

namespace RackController.Cli.Tests.Verbs;

public sealed class AdviseVerbTests
{
    [Fact]
    public void TheDemoRackIsAdvisedAsApproved()
    {
        var answer = Prompt.Run(
            "advise", Prompt.DemoRack, "--dli", "12", "--more", "2", "--stock", "0.25", "--target", "1.2", "--now", "0.8");
        Assert.Equal(0, answer.ExitCode);
        Approved.Matches("advise", answer.Output);
    }

    [Fact]
    public void WithoutWishesThereIsNoTableOfStock()
    {
        var answer = Prompt.Run("advise", Prompt.DemoRack);
        Assert.Equal(0, answer.ExitCode);
        Assert.DoesNotContain("stock", answer.Output, StringComparison.Ordinal);
        Assert.Contains("a structural", answer.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--dli", "-1", "--dli takes a number from 0.1 to 60, such as 12")]
    [InlineData("--depletion", "much", "--depletion takes a number from 1 to 90, such as 30")]
    [InlineData("--wet", "0", "--wet takes a number from 1 to 240, such as 30")]
    [InlineData("--more", "1e9", "--more takes a number from 0.01 to 63, such as 2")]
    [InlineData("--stock", "0", "--stock takes a number from 0.001 to 100, such as 0.25")]
    public void AWishOutOfBoundsIsWrongUse(string option, string value, string complaint)
    {
        var answer = Prompt.Run("advise", Prompt.DemoRack, option, value);
        Assert.Equal(2, answer.ExitCode);
        Assert.StartsWith(complaint, answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--now")]
    [InlineData("--target")]
    [InlineData("--tap")]
    public void WhatBelongsToAMixingTableIsNotPassedOverInSilence(string option)
    {
        var answer = Prompt.Run("advise", Prompt.DemoRack, option, "1");
        Assert.Equal(2, answer.ExitCode);
        Assert.StartsWith($"{option} belongs to a mixing table: write --stock too", answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2", "1", "--target is weaker than --tap")]
    [InlineData("0", "2", "--stock is too weak to reach --target")]
    public void AMixThatCannotBeIsWrongUse(string tap, string target, string complaint)
    {
        var answer = Prompt.Run("advise", Prompt.DemoRack, "--stock", "0.001", "--tap", tap, "--target", target);
        Assert.Equal(2, answer.ExitCode);
        Assert.StartsWith(complaint, answer.Error, StringComparison.Ordinal);
    }
}
