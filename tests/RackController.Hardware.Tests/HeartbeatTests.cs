using System.Device.Gpio;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests;

public sealed class HeartbeatTests
{
    private readonly FakeGpioChip chip = new("board") { Log = [] };

    [Fact]
    public void ItRestsLowAndChangesTwiceASecondWhileScansAreGood()
    {
        using var io = Open();
        Assert.Equal(["board: claim 26 Output Low"], chip.Log);
        chip.Log.Clear();
        for (var time = 0; time < 2000; time += 100)
        {
            io.Beat(MonotonicTime.FromMilliseconds(time));
        }

        Assert.Equal(["board: write 26 High", "board: write 26 Low", "board: write 26 High", "board: write 26 Low"], chip.Log);
    }

    /// <summary>A relay that is fed by changes lets go; whoever tells of a lost chip are the lines that are on it.</summary>
    [Fact]
    public void AChipThatIsGoneEndsItAndBeginsItAgainOnceItIsBack()
    {
        using var io = Open();
        chip.IsGone = true;
        io.Beat(MonotonicTime.FromMilliseconds(0));
        io.Beat(MonotonicTime.FromMilliseconds(500));
        chip.IsGone = false;
        chip.Log.Clear();
        io.Beat(MonotonicTime.FromMilliseconds(1000));
        io.Beat(MonotonicTime.FromMilliseconds(1500));
        Assert.Equal("board: claim 26 Output Low", chip.Log[0]);
        Assert.Equal(2, chip.Log.Count(entry => entry.StartsWith("board: write 26", StringComparison.Ordinal)));
    }

    [Fact]
    public void ItEndsLow()
    {
        var io = Open();
        io.Beat(MonotonicTime.FromMilliseconds(0));
        Assert.Equal(PinValue.High, chip.LevelOf(26));
        io.Dispose();
        Assert.Equal(PinValue.Low, chip.LevelOf(26));
    }

    [Fact]
    public void ALineThatCannotBeHadIsRefusedAtTheStart()
    {
        chip.Fail(GpioCall.Claim, line: 26);
        Assert.Throws<IOException>(Open);
    }

    private GpioRackIo Open() => new(
        Sites.OneRack() with { Io = new GpioIo([], []) { Heartbeat = new GpioLine("board", 26) } }, _ => chip.Open());
}
