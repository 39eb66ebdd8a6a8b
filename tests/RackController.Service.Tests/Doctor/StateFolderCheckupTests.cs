namespace RackController.Service.Tests;

public sealed class StateFolderCheckupTests : IDisposable
{
    // Where the C library of Linux has its shared memory: a tmpfs (shm_overview(7)).
    private readonly string inMemory = $"/dev/shm/rackcontroller-{Guid.NewGuid():N}";

    public void Dispose()
    {
        if (Directory.Exists(inMemory))
        {
            Directory.Delete(inMemory, recursive: true);
        }
    }

    [Fact]
    public void AFolderInMemoryIsWrongBeforeItIsEverUsed()
    {
        var finding = new HostCheckup(new StateFolder(Path.Combine(inMemory, "state"))).Disk(out var isDriven);
        Assert.Equal(FindingWeight.Wrong, finding.Weight);
        Assert.Contains("is in memory, and gone after a power cut", finding.Text);
        Assert.False(isDriven);
        Assert.False(Directory.Exists(inMemory));
    }

    [Fact]
    public void AFolderInMemoryIsWrongWhileAControllerUsesIt()
    {
        Directory.CreateDirectory(inMemory);
        var folder = new StateFolder(inMemory);
        using var held = RackLock.Take(folder.Lock);
        Assert.Equal(FindingWeight.Wrong, new HostCheckup(folder).Disk(out var isDriven).Weight);
        Assert.True(isDriven);
    }

    // As .NET names them: by the kernel's name since version 10, by its own before.
    [Theory]
    [InlineData("overlay")]
    [InlineData("overlayfs")]
    public void AnOverlayIsDoubtfulSinceItMayBeInMemory(string format)
    {
        var finding = HostCheckup.JudgeDisk("/var/lib/rackcontroller", "not in use yet", format, 4_000_000_000);
        Assert.Equal(FindingWeight.Doubtful, finding.Weight);
        Assert.EndsWith("switch the overlay off, or mount a disk at that folder", finding.Text);
    }

    [Theory]
    [InlineData("ext4")]
    [InlineData("overlay")]
    public void ADiskWithoutRoomIsWrong(string format)
    {
        var finding = HostCheckup.JudgeDisk("/var/lib/rackcontroller", "driven by nobody now", format, 49_999_999);
        Assert.Equal(new Finding(FindingWeight.Wrong, "state folder", "/var/lib/rackcontroller has 49 MB left: make room"), finding);
    }

    [Fact]
    public void ADiskWithRoomIsSoundAndSaysWhoUsesIt()
    {
        var finding = HostCheckup.JudgeDisk("/var/lib/rackcontroller", "not in use yet", "ext4", 50_000_000);
        Assert.Equal(
            new Finding(FindingWeight.Sound, "state folder", "/var/lib/rackcontroller on ext4, 50 MB left, not in use yet"), finding);
    }
}
