using RackController.Hardware.CharacterDevice;
using RackController.Hardware.Expanders;
using RackController.Hardware.Probes;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>This board, through the kernel.</summary>
/// <param name="clock">The monotonic clock.</param>
public sealed class Board(Func<MonotonicTime> clock) : IBoard
{
    /// <inheritdoc/>
    public ChipSight Chip(string name) => GpioChips.Look(name);

    /// <inheritdoc/>
    public string? HolderOf(GpioLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var chip = GpioChips.Open(line.Chip);
        using (chip.Device)
        {
            return HeldLine.HolderOf(chip, line.Offset);
        }
    }

    /// <inheritdoc/>
    public double Ask(Site site, Probe probe)
    {
        using var readers = new ProbeReaders(site, ProbePorts.OfBoard, clock);
        return readers.Of(probe).Read();
    }

    /// <inheritdoc/>
    public void AskExpander(BusPart part)
    {
        ArgumentNullException.ThrowIfNull(part);
        using var port = ExpanderPort.Of(part.Kind, GpioRackIo.OpenPart(part));
        port.Read();
    }
}
