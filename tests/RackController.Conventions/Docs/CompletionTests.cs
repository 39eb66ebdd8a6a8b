namespace RackController.Conventions.Docs;

/// <summary>The completion for shells asks the program, so the program has to answer with all that it knows.</summary>
public sealed class CompletionTests
{
    public static TheoryData<string> Verbs => [.. CommandLine.Root().Subcommands.Select(verb => verb.Name)];

    [Fact]
    public void EveryVerbIsSuggested() =>
        Assert.Empty(CommandLine.Root().Subcommands.Select(verb => verb.Name).Except(SuggestionsFor("")));

    [Theory]
    [MemberData(nameof(Verbs))]
    public void EveryOptionOfAVerbIsSuggested(string verb) => Assert.Empty(
        CommandLine.Root().Subcommands.Single(command => command.Name == verb).Options
            .Select(option => option.Name).Except(SuggestionsFor($"{verb} --")));

    private static string[] SuggestionsFor(string typed)
    {
        var line = $"rackcontroller {typed}";
        using var answer = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(0, CommandLine.Run([$"[suggest:{line.Length}]", line], answer, error));
        return answer.ToString().Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
    }
}
