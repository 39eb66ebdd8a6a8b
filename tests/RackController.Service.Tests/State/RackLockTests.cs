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

    [FullDiskFact]
    public void AFullDiskDoesNotTakeTheLockAway()
    {
        using var disk = new TinyDisk(folder.Path, kibibytes: 64);
        var path = System.IO.Path.Combine(disk.Path, "lock");
        File.WriteAllText(path, "");
        disk.Fill();

        using var first = RackLock.Take(path);

        Assert.Contains("(unknown)", Assert.Throws<CouldNotRunException>(() => RackLock.Take(path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALockFileThatCannotBeOpenedOrLockedIsAnErrorOfTheDisk()
    {
        Directory.CreateDirectory(folder.File("lock"));

        Assert.Throws<IOException>(() => RackLock.Take(folder.File("lock")));
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
