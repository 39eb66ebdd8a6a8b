using System.Diagnostics;
using System.Text.RegularExpressions;
using RackController.Cli.Tests.Support;

namespace RackController.Cli.Tests.Verbs;

public sealed partial class BenchVerbTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("bench-verb-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void AScenarioThatHoldsExitsWith0AndLeavesItsReports()
    {
        var answer = Prompt.Run("bench", Prompt.Scenario("hands-in-the-rack"), "--out", folder.FullName);

        Assert.Equal(0, answer.ExitCode);
        Assert.Empty(answer.Error);
        Assert.Equal(
            ["events.log", "junit.xml", "report.html", "result.json"], folder.GetFiles().Select(file => file.Name).Order());
    }

    [Fact]
    public void TheSummaryReadsAsApproved()
    {
        var answer = Prompt.Run("bench", Prompt.Scenario("pump-never-stops"), "--out", folder.FullName);
        var text = answer.Output.Replace(folder.FullName, "FOLDER", StringComparison.Ordinal);
        Approved.Matches("bench-pump-never-stops", Speed().Replace(text, "N scans in T s, S times as fast as time passes\nevent log: H"));
    }

    [Fact]
    public void TheSummaryTellsOfFloodsThatDoNotDoWhatTheyShouldAndOnlyOfThose()
    {
        using var starved = new StarvedRack();
        var right = Prompt.Run("bench", Prompt.Scenario("hands-in-the-rack"), "--out", folder.FullName);
        var wrong = Prompt.Run("bench", starved.Scenario, "--out", folder.FullName);

        Assert.DoesNotContain("does not do what it should", right.Output, StringComparison.Ordinal);
        Assert.Contains("A flood of north does not do what it should:", wrong.Output, StringComparison.Ordinal);
        Assert.Contains("Wrong: tier 4 gets 1.5 L/min, too little to fill it", wrong.Output, StringComparison.Ordinal);
        Assert.Contains("- set the minor losses of the branches: tier 1 to", wrong.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AnExpectationThatIsNotMetExitsWith1AndNamesItsMomentAndItsCauses()
    {
        var answer = Prompt.Run("bench", Broken("    never: { load: north/pump, powered: yes }\n"), "--out", folder.FullName);

        Assert.Equal(1, answer.ExitCode);
        Assert.Contains("scene DID NOT HOLD", answer.Output, StringComparison.Ordinal);
        Assert.Contains("NOT MET  it holds", answer.Output, StringComparison.Ordinal);
        Assert.Contains(
            "at 2026-03-02 07:00:00.0 +00:00: north/pump draws power and is told to be on", answer.Output, StringComparison.Ordinal);
        Assert.Contains("north: due, because the schedule floods at 07:00", answer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AScenarioWithMistakesExitsWith1AndALineForEach()
    {
        var answer = Prompt.Run("bench", Broken("    never: { load: north/pomp, powered: yes }\n"), "--out", folder.FullName);

        Assert.Equal(1, answer.ExitCode);
        Assert.Matches(@"scene\.yaml:\d+:\d+: `load` is `north/pomp`: did you mean `north/pump`\?", answer.Error);
        Assert.DoesNotContain("   at ", answer.All, StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderThatCannotBeWrittenExitsWith3BeforeTheRun()
    {
        var occupied = Path.Combine(folder.FullName, "file");
        File.WriteAllText(occupied, "");
        var answer = Prompt.Run("bench", Prompt.Scenario("first-week"), "--out", Path.Combine(occupied, "below"));

        Assert.Equal(3, answer.ExitCode);
        Assert.Single(answer.Error.TrimEnd().Split('\n'));
        Assert.Contains("choose another folder with --out", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoProcessesGiveTheSameLogByteForByte()
    {
        var first = LogOfAProcess("first");
        Assert.NotEmpty(first);
        Assert.Equal(first, LogOfAProcess("second"));
    }

    private byte[] LogOfAProcess(string name)
    {
        var outFolder = Path.Combine(folder.FullName, name);
        var program = Path.Combine(AppContext.BaseDirectory, "RackController.dll");
        using var process = Process.Start(new ProcessStartInfo(
            "dotnet", [program, "bench", Prompt.Scenario("breaker-trip-at-noon"), "--out", outFolder])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = folder.FullName,
        })!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return File.ReadAllBytes(Path.Combine(outFolder, "events.log"));
    }

    private string Broken(string expectation)
    {
        var scenes = folder.CreateSubdirectory("scenes");
        var file = Path.Combine(scenes.FullName, "scene.yaml");
        File.WriteAllText(
            file,
            $"about: a scene of a test\nrack-file: {Prompt.DemoRack}\nstart: 2026-03-02 06:30\nlength: 2 h\nexpect:\n  - that: it holds\n"
                + expectation);
        return file;
    }

    [GeneratedRegex(@"\d+ scans in .*\nevent log: [0-9a-f]{16}")]
    private static partial Regex Speed();
}
