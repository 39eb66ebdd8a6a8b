using System.Device.Gpio;
using NodaTime;
using RackController.Hardware.Expanders;
using RackController.Hardware.Tests.Probes;
using RackController.Model;

namespace RackController.Hardware.Tests.Expanders;

public sealed class ExpanderTests
{
    private static readonly TimeSpan atMost = TimeSpan.FromSeconds(20);
    private long nowNs;

    /// <summary>An active-low relay rests on a high line: it must be high from the first instant that it is driven, and before that its
    /// wiring pulls it so.</summary>
    [Fact]
    public void NoRelayClicksAsItsLineIsTaken()
    {
        var part = new FakeExpander(pulls: 0xFFFF);
        using var lines = Lines(part);
        using var chip = new GpioController(new ExpanderDriver(lines, 16));
        chip.OpenPin(3, PinMode.Output, PinValue.High);
        chip.OpenPin(12, PinMode.Output, PinValue.High);
        Until(() => part.Levels.Length > 20);
        Assert.All(part.Levels, levels => Assert.Equal(0xFFFF, levels));
    }

    [Fact]
    public void WhatIsWrittenIsReadBackFromTheLine()
    {
        using var lines = Lines(new FakeExpander(pulls: 0xFFFF) { Shorted = 1 << 5 });
        using var chip = new GpioController(new ExpanderDriver(lines, 16));
        chip.OpenPin(4, PinMode.Output, PinValue.Low);
        chip.OpenPin(5, PinMode.Output, PinValue.Low);
        chip.Write(4, PinValue.High);
        chip.Write(5, PinValue.High);
        Until(() => Reads(chip, 5) == PinValue.Low);
        Assert.Equal(PinValue.High, chip.Read(4));
    }

    [Fact]
    public void APartThatIsGoneIsToldOfAfterAMomentAndDrivenAgainOnceItIsBack()
    {
        var part = new FakeExpander(pulls: 0);
        using var lines = Lines(part);
        using var chip = new GpioController(new ExpanderDriver(lines, 16));
        chip.OpenPin(0, PinMode.Output, PinValue.High);
        part.Unplug();
        chip.Write(0, PinValue.Low);
        Assert.Equal(PinValue.Low, chip.Read(0));
        Interlocked.Add(ref nowNs, (ExpanderLines.Patience + Duration.FromMilliseconds(1)).ToInt64Nanoseconds());
        var failure = Assert.Throws<IOException>(() => chip.Read(0));
        Assert.Contains("bank", failure.Message, StringComparison.Ordinal);

        chip.Write(0, PinValue.High);
        part.Plug();
        Until(() => part.Levels[^1] == 1);
        Until(() => Reads(chip, 0) == PinValue.High);
    }

    /// <summary>What is wanted is read back as done for a moment; nobody may call a load safe by that.</summary>
    [Fact]
    public void WhatAPartWasToldIsSettledOnlyOnceItWasSeenOnTheBus()
    {
        var part = new FakeExpander(pulls: 0);
        using var lines = Lines(part);
        using var chip = new GpioController(new ExpanderDriver(lines, 16));
        chip.OpenPin(0, PinMode.Output, PinValue.High);
        Assert.Null(lines.Settle(atMost));
        part.Unplug();
        chip.Write(0, PinValue.Low);
        Assert.Contains("bank", lines.Settle(TimeSpan.FromMilliseconds(300)), StringComparison.Ordinal);

        part.Plug();
        Assert.Null(lines.Settle(atMost));
        Assert.Equal(0, part.Levels[^1]);
    }

    /// <summary>By the data sheet of the PCF8574 (from memory): one byte, a bit for each line, and a high line is a weak one.</summary>
    [Fact]
    public void AnEightLinePartLeavesTheLinesHighThatNobodyTook()
    {
        var written = new List<byte[]>();
        using var bus = new FakeBus(_ => [0b1111_1011]);
        using var port = ExpanderPort.Of(BusPartKind.Pcf8574, new Listening(bus, written.Add));
        port.Drive(levels: 0b0000_0001, outputs: 0b0000_0101);
        Assert.Equal<byte[]>([0b1111_1011], Assert.Single(written));
        Assert.Equal(0b1111_1011, port.Read());
    }

    [Fact]
    public void ALineThatThePartHasNotIsRefused()
    {
        using var lines = Lines(new FakeExpander(pulls: 0));
        using var chip = new GpioController(new ExpanderDriver(lines, 16));
        Assert.Throws<GpioUnavailableException>(() => chip.OpenPin(16, PinMode.Output, PinValue.Low));
    }

    private ExpanderLines Lines(FakeExpander part) =>
        new("bank", () => ExpanderPort.Of(BusPartKind.Mcp23017, part), () => new MonotonicTime(Interlocked.Read(ref nowNs)));

    private static PinValue? Reads(GpioController chip, int line)
    {
        try
        {
            return chip.Read(line);
        }
        catch (IOException)
        {
            return null;
        }
    }

    private static void Until(Func<bool> isSo) => Assert.True(SpinWait.SpinUntil(isSo, atMost));
}
