using RackController.Cli.Tests.Support;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Cli.Tests.Verbs;

public sealed class ReplayVerbTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rackcontroller-test-");

    private StateFolder State => new(Path.Combine(folder.FullName, "state"));

    [Fact]
    public async Task WhatAServiceDecidedComesOutAgainAndExitsWith0()
    {
        await RunAsync(scans: 3000);
        await RunAsync(scans: 1000);

        var answer = Prompt.Run("replay", State.Journal);

        Assert.Equal("", answer.Error);
        Assert.Contains("Run 2 of Millbrook cellar", answer.Output, StringComparison.Ordinal);
        Assert.Matches(@"Same: \d+ commands and \d+ events of 2 runs came out again\.", answer.Output);
        Assert.Equal(0, answer.ExitCode);
    }

    [Fact]
    public async Task AnotherFileThatWouldHaveMadeSomethingElseOfItExitsWith1AndSaysWhat()
    {
        await RunAsync(scans: 3000);
        var other = Path.Combine(folder.FullName, "other.yaml");
        var text = await File.ReadAllTextAsync(Prompt.DemoRack);
        await File.WriteAllTextAsync(other, text.Replace("stagger: 1 min", "stagger: 2 min", StringComparison.Ordinal));

        var same = Prompt.Run("replay", State.Journal, "--with", Prompt.DemoRack);
        var different = Prompt.Run("replay", State.Journal, "--with", other);

        Assert.Contains("8 of 8 loads would have been on and off as they were", same.Output, StringComparison.Ordinal);
        Assert.Contains("What this cannot know", different.Output, StringComparison.Ordinal);
        Assert.Equal(0, same.ExitCode);
    }

    [Fact]
    public void AJournalThatIsNotThereExitsWith3AndOneLine()
    {
        var answer = Prompt.Run("replay", State.Journal);

        Assert.Equal(3, answer.ExitCode);
        Assert.Equal("", answer.Output);
        var line = Assert.Single(answer.Error.Trim().Split('\n'));
        Assert.StartsWith($"{State.Journal}: there is no such file", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ARackFileThatIsWrongExitsWith1BeforeAnythingIsReplayed()
    {
        await RunAsync(scans: 10);
        var wrong = Path.Combine(folder.FullName, "wrong.yaml");
        await File.WriteAllTextAsync(wrong, "site: 3\n");

        var answer = Prompt.Run("replay", State.Journal, "--with", wrong);

        Assert.Equal(1, answer.ExitCode);
        Assert.Equal("", answer.Output);
        Assert.Contains("wrong.yaml:1:", answer.Error, StringComparison.Ordinal);
    }

    public void Dispose() => folder.Delete(recursive: true);

    private async Task RunAsync(int scans)
    {
        var text = await File.ReadAllTextAsync(Prompt.DemoRack);
        var ending = await RackService.RunAsync(RackFileReader.Parse(text, Prompt.DemoRack).Site!, new ServiceOptions
        {
            RackFile = Prompt.DemoRack,
            RackFileText = text,
            Folder = State,
            Speed = 1000,
            Screen = async (rack, end) =>
            {
                while ((await rack.LookAsync(end)).Health.Scans < scans)
                {
                }
            },
        });
        Assert.Equal(new ServiceEnding(null, null), ending);
    }
}
