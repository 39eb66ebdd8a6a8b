using System.Text.RegularExpressions;

namespace RackController.Conventions.Docs;

/// <summary>What the pages show is what happens.</summary>
public sealed partial class CommandTests
{
    private const string ConsoleInfo = "console";

    public static TheoryData<string> ShownCommands => [.. Shown().Select(command => command.Place)];

    public static TheoryData<string> Mentioned =>
    [
        .. Repository.Pages.SelectMany(page => Verb().Matches(Repository.Read(page)))
            .Select(match => match.Groups["verb"].Value)
            .Distinct(),
    ];

    [Theory]
    [MemberData(nameof(ShownCommands))]
    public void ACommandOnAPageRunsAndPrintsWhatThePageShows(string place)
    {
        var command = Shown().Single(shown => shown.Place == place);
        Assert.True(command.RunsTheProgram, $"{place}: a console block shows runs of the program; `{command.Text}` is for sh or text");
        var (exitCode, output) = BuiltProgram.Run(command.Arguments);
        var printed = string.Join('\n', output);
        Assert.True(exitCode == 0, $"{place}: exit code {exitCode}\n{printed}");
        var missing = command.FirstLineMissingFrom(output);
        Assert.True(missing is null, $"{place}: this line is not in its place:\n{missing}\nof what was printed:\n{printed}");
    }

    [Theory]
    [MemberData(nameof(Mentioned))]
    public void AVerbOnAPageExists(string verb)
    {
        var (exitCode, output) = BuiltProgram.Run(verb, "--help");
        Assert.True(exitCode == 0, string.Join('\n', output));
        Verdict.None($"A page gives {verb} an option that its help does not know:",
            OptionsGivenTo(verb).Where(option => !output.Any(line => line.Contains(option, StringComparison.Ordinal))));
    }

    [Fact]
    public void EveryVerbIsShownInTheReadme()
    {
        var readme = Repository.Read("README.md");
        var verbs = BuiltProgram.Run("--help").Output.SkipWhile(line => !line.StartsWith("Commands:", StringComparison.Ordinal)).Skip(1)
            .TakeWhile(line => line.StartsWith("  ", StringComparison.Ordinal))
            .Select(line => line.Trim().Split(' ')[0])
            .ToList();
        Assert.NotEmpty(verbs);
        Verdict.None("README.md does not show a verb:",
            verbs.Where(verb => !Verb().Matches(readme).Any(match => match.Groups["verb"].Value == verb)));
    }

    [Fact]
    public void AScriptOnAPageExists() => Verdict.None("A page tells to run a script that is not there:",
        from block in Block.All
        where block.Info == "sh"
        from line in block.Lines
        from match in Script().Matches(line)
        where !Repository.Has(match.Value.Trim())
        select $"{block.Page}:{block.Line}: {match.Value}");

    private static IEnumerable<ShownCommand> Shown() =>
        Block.All.Where(block => block.Info == ConsoleInfo).SelectMany(block => block.Commands());

    private static IEnumerable<string> OptionsGivenTo(string verb) =>
        from page in Repository.Pages
        from line in Repository.Lines(page)
        from command in Verb().Matches(line)
        where command.Groups["verb"].Value == verb
        from option in Option().Matches(command.Groups["rest"].Value)
        select option.Value;

    [GeneratedRegex("""src/RackController -- (?<verb>[a-z][a-z-]*)(?<rest>[^`\n]*)""")]
    private static partial Regex Verb();

    [GeneratedRegex("--[a-z][a-z-]*")]
    private static partial Regex Option();

    [GeneratedRegex("""(?<=^|\s)(tests|deploy|\.ci)/[\w./-]+""")]
    private static partial Regex Script();
}
