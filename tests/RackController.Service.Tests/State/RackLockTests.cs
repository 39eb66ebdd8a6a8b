namespace RackController.Service.Tests;

public sealed class RackLockTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void ASecondControllerIsRefusedInOneLineThatNamesTheFirst()
    {
        using var first = RackLock.Take(folder.File("lock"));

        var refusal = Assert.Throws<CouldNotRunException>(() => RackLock.Take(folder.File("lock")));

        Assert.Contains($"process {Environment.ProcessId} ", refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refusal.Message);
    }

    [Fact]
    public void ALockThatWasLetGoCanBeTakenAgain()
    {
        RackLock.Take(folder.File("lock")).Dispose();

        RackLock.Take(folder.File("lock")).Dispose();

        Assert.Equal($"{Environment.ProcessId}\n", File.ReadAllText(folder.File("lock")));
    }

    [Fact]
    public void AFolderThatCannotBeMadeIsATroubleAndNoReasonToLeaveARackUndriven()
    {
        File.WriteAllText(folder.File("in-the-way"), "");

        using var taken = FolderAndLock.Take(new StateFolder(folder.File("in-the-way/state")));

        Assert.Null(taken.Lock);
        Assert.NotNull(taken.Trouble);
    }

    public void Dispose() => folder.Dispose();
}
