using System.Device.Gpio;
using RackController.Hardware.CharacterDevice;
using RackController.Model;

namespace RackController.Hardware.Probes;

/// <summary>The line of a meter on a chip of the board.</summary>
internal sealed unsafe class PulseLine : IPulseLine
{
    /// <summary>How many pulses the kernel keeps for us, by its default for one line (<c>linux/gpio.h</c>); of more it keeps the
    /// newest.</summary>
    public const int Kept = 16;

    private readonly GpioChip chip;
    private readonly HeldLine line;

    /// <summary>Takes the line.</summary>
    /// <exception cref="IOException">It cannot be had, or its chip reports no edges.</exception>
    public PulseLine(PulseProbe probe)
    {
        chip = GpioChips.Open(probe.Line.Chip);
        try
        {
            line = HeldLine.Take(chip, probe.Line.Offset, ContactInput.ModeOf(probe.Pull), PinValue.Low, ChipOpener.Consumer);
            line.ReportEdges(LineFlags.EdgeRising);
        }
        catch
        {
            line?.Dispose();
            chip.Device.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public int Take(Span<Pulse> pulses)
    {
        var entry = EdgeWatch.Entry(line.Handle);
        if (LibC.Poll(&entry, 1, timeoutMs: 0) < 0)
        {
            throw LibC.Failure("the pulses of a flow meter cannot be asked for");
        }

        if (entry.ReturnedEvents == 0)
        {
            return 0;
        }

        var events = stackalloc LineEvent[Kept];
        var bytes = LibC.Read(line.Handle, events, (nuint)(Math.Min(Kept, pulses.Length) * sizeof(LineEvent)));
        if (bytes < 0)
        {
            throw LibC.Failure("the pulses of a flow meter cannot be read");
        }

        var count = (int)bytes / sizeof(LineEvent);
        for (var i = 0; i < count; i++)
        {
            pulses[i] = new Pulse(events[i].TimestampNs, events[i].LineSequence);
        }

        return count;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        line.Dispose();
        chip.Device.Dispose();
    }
}
