using RackController.Cli.Tests.Support;

namespace RackController.Cli.Tests.Verbs;

public sealed class ProofTestsVerbTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("proof-tests-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void WithoutAJournalNothingWasTestedAndNothingIsOverdue()
    {
        var answer = Prompt.Run("proof-tests", Prompt.DemoRack, "--state", folder.FullName);
        Assert.Equal(0, answer.ExitCode);
        Assert.Contains("north/reservoir low float", answer.Output, StringComparison.Ordinal);
        Assert.Contains("never tested", answer.Output, StringComparison.Ordinal);
        Assert.Contains("14 d after the first run", answer.Output, StringComparison.Ordinal);
        Assert.Contains("0 overdue, 0 failed", answer.Output, StringComparison.Ordinal);
        Assert.Empty(folder.GetFiles());
    }

    [Fact]
    public void AJournalThatCannotBeReadIsSaidSo()
    {
        File.WriteAllText(Path.Combine(folder.FullName, "journal.db"), "no journal");
        var answer = Prompt.Run("proof-tests", Prompt.DemoRack, "--state", folder.FullName);
        Assert.Equal(3, answer.ExitCode);
        Assert.Contains("journal.db: cannot be read", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ARackFileThatIsWrongIsAnswered()
    {
        var file = Path.Combine(folder.FullName, "rack.yaml");
        File.WriteAllText(file, "site: x\n");
        Assert.Equal(1, Prompt.Run("proof-tests", file).ExitCode);
    }
}
