namespace RackController.Model.Tests.Io;

public sealed class GpioLineTests
{
    [Fact]
    public void ALineByItsOffsetIsFoundFromTheBeginning()
    {
        var line = new GpioLine("board", 16);
        Assert.Equal((16, "line 16 of chip 'board'"), (line.Offset, line.ToString()));
    }

    [Fact]
    public void ALineByItsNameHasNoOffsetBeforeItWasFound()
    {
        var line = GpioLine.Named("board", "GPIO17");
        Assert.Equal("line 'GPIO17' of chip 'board'", line.ToString());
        Assert.Throws<InvariantBrokenException>(() => line.Offset);
        Assert.Equal((17, "line 17 'GPIO17' of chip 'board'"), (line.FoundAt(17).Offset, line.FoundAt(17).ToString()));
    }

    [Fact]
    public void LinesAreTheSameByChipAndOffsetOrName()
    {
        Assert.Equal(GpioLine.Named("board", "GPIO17"), GpioLine.Named("board", "GPIO17"));
        Assert.NotEqual(GpioLine.Named("board", "GPIO17"), GpioLine.Named("other", "GPIO17"));
        Assert.NotEqual(new GpioLine("board", 16), new GpioLine("board", 17));
    }
}
