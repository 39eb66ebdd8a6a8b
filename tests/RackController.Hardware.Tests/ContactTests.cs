using System.Device.Gpio;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests;

public sealed class ContactTests
{
    [Fact]
    public void AnEdgeWakesTheScan()
    {
        var boards = new Boards();
        using var io = boards.Open();
        var calls = 0;
        io.InputChanged = () => calls++;

        boards.Contacts.Pull(Boards.LowFloatLine, PinValue.High);

        Assert.Equal(1, calls);
    }

    [Fact]
    public void AChipWithoutEdgesIsPolledAndSaysSo()
    {
        var boards = new Boards();
        boards.Contacts.Fail(GpioCall.Watch);
        using var io = boards.Open();
        boards.Contacts.Pull(Boards.LowFloatLine, PinValue.High);

        Assert.Null(boards.Scan(io, 0));
        Assert.Null(boards.Scan(io, 100));

        Assert.Equal(1, boards.Readings[boards.LowFloat].Value);
        Assert.Contains(io.Describe(), line => line.Contains("reports no edges", StringComparison.Ordinal));
    }

    [Fact]
    public void TheHarmfulValueIsReadAtOnceAndTheHarmlessOnlyAfterItsDebounce()
    {
        var boards = new Boards();
        using var io = boards.Open();
        Assert.Null(boards.Scan(io, 0));
        Assert.Equal(new Reading(0, ReadingQuality.Good, MonotonicTime.Zero), boards.Readings[boards.LowFloat]);

        boards.Contacts.Pull(Boards.LowFloatLine, PinValue.High);
        Assert.Null(boards.Scan(io, 10));
        Assert.Equal(0, boards.Readings[boards.LowFloat].Value);
        Assert.Null(boards.Scan(io, 60));
        Assert.Equal(1, boards.Readings[boards.LowFloat].Value);

        boards.Contacts.Pull(Boards.LowFloatLine, PinValue.Low);
        Assert.Null(boards.Scan(io, 61));
        Assert.Equal(0, boards.Readings[boards.LowFloat].Value);
    }

    [Fact]
    public void AfterALossTheFirstSampleIsBelievedAgain()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Contacts.Pull(Boards.LowFloatLine, PinValue.High);
        boards.Contacts.Fail(GpioCall.Read);
        Assert.NotNull(boards.Scan(io, 0));
        Assert.Equal(ReadingQuality.Corrupt, boards.Readings[boards.LowFloat].Quality);
        boards.Contacts.Mend();

        Assert.Null(boards.Scan(io, 100));

        Assert.Equal(new Reading(1, ReadingQuality.Good, MonotonicTime.FromMilliseconds(100)), boards.Readings[boards.LowFloat]);
    }

    [Fact]
    public void ASteadyScanAllocatesNothing()
    {
        var boards = new Boards();
        using var io = boards.Open();
        for (var time = 0; time < 1_000; time += 100)
        {
            Assert.Null(boards.Scan(io, time));
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var time = 1_000; time < 2_000; time += 100)
        {
            boards.Scan(io, time);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
