using System.Device.I2c;
using RackController.Model;

namespace RackController.Hardware.Expanders;

/// <summary>The lines of a part on a bus, all at once.</summary>
/// <remarks>Why not the library's classes: setting one up turns every line into an input and every level to low, so each start of the
/// service would let all relays go, and would energise active-low ones as their lines become outputs.</remarks>
internal abstract class ExpanderPort(I2cDevice device) : IDisposable
{
    /// <summary>The part on its bus.</summary>
    protected I2cDevice Device => device;

    /// <summary>The lines of a part.</summary>
    public static ExpanderPort Of(BusPartKind kind, I2cDevice device) => kind switch
    {
        BusPartKind.Mcp23017 => new Mcp23017Port(device),
        BusPartKind.Pcf8574 => new Pcf8574Port(device),
        _ => throw new InvariantBrokenException($"every part with lines for relays has its port, {kind} too"),
    };

    /// <summary>Drives levels. A part that was without power has forgotten what it was told, so everything is said each time, and the
    /// levels before the directions.</summary>
    /// <param name="levels">A bit for each line, set for high.</param>
    /// <param name="outputs">A bit for each line that is driven; the others are left to their wiring.</param>
    /// <exception cref="IOException">The part does not answer.</exception>
    public abstract void Drive(int levels, int outputs);

    /// <summary>The levels that are on the lines, a bit for each.</summary>
    /// <exception cref="IOException">The part does not answer.</exception>
    public abstract int Read();

    /// <inheritdoc/>
    public void Dispose() => device.Dispose();
}

/// <summary>An MCP23017. Its registers come in pairs, one for each eight lines, and one write goes on from the first to the second (data
/// sheet, from memory).</summary>
internal sealed class Mcp23017Port(I2cDevice device) : ExpanderPort(device)
{
    private const byte Directions = 0x00;
    private const byte Levels = 0x12;
    private const byte Latches = 0x14;

    /// <inheritdoc/>
    public override void Drive(int levels, int outputs)
    {
        Write(Latches, levels);
        Write(Directions, ~outputs);
    }

    /// <inheritdoc/>
    public override int Read()
    {
        Span<byte> both = stackalloc byte[2];
        Device.WriteRead([Levels], both);
        return both[0] | (both[1] << 8);
    }

    private void Write(byte register, int value) => Device.Write([register, (byte)(value & 0xFF), (byte)((value >> 8) & 0xFF)]);
}

/// <summary>A PCF8574. It has no directions: a line that is high gives way to whoever pulls it low (data sheet, from memory).</summary>
internal sealed class Pcf8574Port(I2cDevice device) : ExpanderPort(device)
{
    /// <inheritdoc/>
    public override void Drive(int levels, int outputs) => Device.Write([(byte)((levels | ~outputs) & 0xFF)]);

    /// <inheritdoc/>
    public override int Read()
    {
        Span<byte> levels = stackalloc byte[1];
        Device.Read(levels);
        return levels[0];
    }
}
