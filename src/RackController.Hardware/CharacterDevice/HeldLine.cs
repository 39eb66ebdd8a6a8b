using System.Device.Gpio;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace RackController.Hardware.CharacterDevice;

/// <summary>One line that this process holds. Nobody else can drive it until it is released.</summary>
internal sealed class HeldLine : IDisposable
{
    private readonly string name;
    private readonly SafeFileHandle line;
    private readonly LineFlags flags;

    private HeldLine(string name, PinMode mode, SafeFileHandle line, LineFlags flags)
    {
        this.name = name;
        Mode = mode;
        this.line = line;
        this.flags = flags;
    }

    /// <summary>What the line is used as.</summary>
    internal PinMode Mode { get; }

    /// <summary>What is called when the line changes; null while nobody listens.</summary>
    internal PinChangeEventHandler? Changed { get; set; }

    /// <summary>The line's file descriptor, to poll for edges.</summary>
    internal SafeFileHandle Handle => line;

    /// <summary>Takes a line. An output drives <paramref name="initial"/> from the instant it becomes one: direction and
    /// level travel in one request, and the kernel sets the level first.</summary>
    /// <exception cref="GpioUnavailableException">Another process holds it, or the chip does not have it.</exception>
    /// <exception cref="IOException">The kernel refused otherwise.</exception>
    internal static unsafe HeldLine Take(GpioChip chip, int offset, PinMode mode, PinValue initial, string consumer)
    {
        var name = $"line {offset} of chip '{chip.Label}'";
        var flags = FlagsOf(mode);
        LineRequest request = default;
        request.LineCount = 1;
        request.Offsets[0] = (uint)offset;
        Encoding.UTF8.GetBytes(consumer, new Span<byte>(request.Consumer, KernelGpio.NameLength - 1));
        request.Config.Flags = flags;
        if (mode == PinMode.Output)
        {
            request.Config.AttributeCount = 1;
            request.Config.FirstAttribute.LineMask = 1;
            request.Config.FirstAttribute.Attribute.Id = KernelGpio.OutputValuesAttribute;
            request.Config.FirstAttribute.Attribute.Value = initial == PinValue.High ? 1u : 0u;
        }

        try
        {
            LibC.Control(chip.Device, KernelGpio.GetLine, ref request, name, $"cannot be claimed as {mode}");
        }
        catch (IOException refusal) when (refusal.HResult == LibC.Busy)
        {
            var holder = HolderOf(chip, offset) ?? "nobody any more";
            throw new GpioUnavailableException(
                $"{name} is held by '{holder}'. Only one process may drive a rack: stop the other one.", refusal);
        }

        return new HeldLine(name, mode, new SafeFileHandle(request.FileDescriptor, ownsHandle: true), flags);
    }

    /// <summary>Who holds a line, by the name that the holder gave; null while nobody does.</summary>
    /// <exception cref="IOException">The chip does not have it.</exception>
    internal static unsafe string? HolderOf(GpioChip chip, int offset)
    {
        var info = LookUp(chip, offset);
        return info.Flags.HasFlag(LineFlags.Used) ? LibC.Text(info.Consumer) : null;
    }

    /// <summary>What the kernel calls a line; empty where it has no name for it.</summary>
    /// <exception cref="IOException">The chip does not have it.</exception>
    internal static unsafe string NameOf(GpioChip chip, int offset)
    {
        var info = LookUp(chip, offset);
        return LibC.Text(info.Name);
    }

    /// <summary>The level on the line now.</summary>
    /// <exception cref="IOException">The kernel cannot say, for instance because the chip is gone.</exception>
    internal PinValue Read()
    {
        var values = new LineValues { Mask = 1 };
        LibC.Control(line, KernelGpio.GetLineValues, ref values, name, "cannot be read");
        return (values.Bits & 1) != 0 ? PinValue.High : PinValue.Low;
    }

    /// <summary>Drives a level.</summary>
    /// <exception cref="IOException">The kernel cannot, for instance because the chip is gone.</exception>
    internal void Write(PinValue value)
    {
        var values = new LineValues { Mask = 1, Bits = value == PinValue.High ? 1u : 0u };
        LibC.Control(line, KernelGpio.SetLineValues, ref values, name, "cannot be written");
    }

    /// <summary>Has the kernel report edges of an input from now on.</summary>
    /// <param name="edges">Which.</param>
    /// <exception cref="IOException">The chip has no interrupt for this line.</exception>
    internal void ReportEdges(LineFlags edges = LineFlags.EdgeRising | LineFlags.EdgeFalling)
    {
        var config = new LineConfig { Flags = flags | edges };
        LibC.Control(line, KernelGpio.SetLineConfig, ref config, name, "cannot report edges");
    }

    /// <inheritdoc/>
    public void Dispose() => line.Dispose();

    private static LineInfo LookUp(GpioChip chip, int offset)
    {
        var info = new LineInfo { Offset = (uint)offset };
        LibC.Control(chip.Device, KernelGpio.GetLineInfo, ref info, $"line {offset} of chip '{chip.Label}'", "cannot be looked up");
        return info;
    }

    private static LineFlags FlagsOf(PinMode mode) => mode switch
    {
        PinMode.Output => LineFlags.Output,
        PinMode.Input => LineFlags.Input,
        PinMode.InputPullUp => LineFlags.Input | LineFlags.BiasPullUp,
        PinMode.InputPullDown => LineFlags.Input | LineFlags.BiasPullDown,
        _ => throw new ArgumentOutOfRangeException(nameof(mode), mode, "Not a mode of a GPIO line."),
    };
}
