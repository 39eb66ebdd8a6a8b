using RackController.Cli.Tests.Support;
using RackController.Page;
using RackController.Service;

namespace RackController.Cli.Tests.Verbs;

[Collection(ConsoleInput.Name)]
public sealed class PeopleVerbTests : IDisposable
{
    private const string Password = "four damp wool socks";
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("people-");
    private readonly TextReader before = Console.In;

    public void Dispose()
    {
        Console.SetIn(before);
        folder.Delete(recursive: true);
    }

    [Fact]
    public void SomebodyIsAddedByAPipeAndMaySignIn()
    {
        var answer = Run(Password + "\n", "add", "ada", "--role", "configure");

        Assert.Equal((0, "ada may configure\n", ""), (answer.ExitCode, answer.Output, answer.Error));
        Assert.True(new People(new StateFolder(folder.FullName)).Find("ada")?.Password.Fits(Password));
        Assert.Equal("ada may configure\n1 may sign in\n", Run("", "list").Output);
    }

    [Fact]
    public void RoleAndPasswordChangeAndTheLastOneGoes()
    {
        Run(Password, "add", "ada", "--role", "configure");
        Run(Password, "add", "ben", "--role", "view");

        Assert.Equal("ben may operate\n", Run("", "role", "ben", "--role", "operate").Output);
        Assert.Equal(0, Run("three dry cotton socks", "password", "ben").ExitCode);
        Assert.True(new People(new StateFolder(folder.FullName)).Find("ben")?.Password.Fits("three dry cotton socks"));
        Assert.Equal("ben is removed\n", Run("", "remove", "ben").Output);
        Assert.Contains("nobody is left", Run("", "remove", "ada").Output, StringComparison.Ordinal);
        Assert.Contains("for this machine only", Run("", "list").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "has 5 characters", "add", "ada", "--role", "configure")]
    [InlineData(1, "has to be somebody who may configure", "add", "ada", "--role", "view")]
    [InlineData(1, "There is nobody called ada", "remove", "ada")]
    [InlineData(2, "takes the name of a person", "remove")]
    [InlineData(2, "takes --role", "add", "ada")]
    [InlineData(2, "--role takes one of view, operate, configure, and not `boss`", "add", "ada", "--role", "boss")]
    [InlineData(2, "people takes one of list, add, role, password, remove, and not `promote`", "promote", "ada")]
    public void AMistakeIsToldInOneLine(int code, string words, params string[] arguments)
    {
        var answer = Run(words.Contains("5 characters", StringComparison.Ordinal) ? "short" : Password, arguments);

        Assert.Equal(code, answer.ExitCode);
        Assert.Contains(words, answer.Error, StringComparison.Ordinal);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public void ADamagedFileIsLeftAsItIs()
    {
        var file = Path.Combine(folder.FullName, "people.json");
        File.WriteAllText(file, "{");

        var answer = Run(Password, "add", "ada", "--role", "configure");

        Assert.Equal(3, answer.ExitCode);
        Assert.Contains("mend it, or remove it", answer.Error, StringComparison.Ordinal);
        Assert.Equal("{", File.ReadAllText(file));
    }

    [Theory]
    [InlineData("--certificate and --key go together", "--certificate", "nowhere.pem")]
    [InlineData("not a certificate with its key", "--certificate", "nowhere.pem", "--key", "nowhere.key")]
    public void ACertificateThatCannotBeUsedIsToldBeforeAnythingRuns(string words, params string[] arguments)
    {
        var answer = Prompt.Run(["run", Prompt.DemoRack, "--state", folder.FullName, .. arguments]);

        Assert.NotEqual(0, answer.ExitCode);
        Assert.Contains(words, answer.Error, StringComparison.Ordinal);
        Assert.Empty(folder.GetFileSystemInfos());
    }

    private Answer Run(string typed, string what, params string[] arguments)
    {
        Console.SetIn(new StringReader(typed));
        return Prompt.Run(["people", what, Prompt.DemoRack, .. arguments, "--state", folder.FullName]);
    }

    private Answer Run(string typed, string[] arguments) => Run(typed, arguments[0], arguments[1..]);
}

/// <summary>The tests that say what is typed, which is one for the whole process.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class ConsoleInput
{
    public const string Name = "console input";
}
