using System.Device.I2c;

namespace RackController.Hardware.Tests.Expanders;

/// <summary>An MCP23017 as its data sheet has it (from memory): sixteen lines, inputs after power-up, a pull on each from
/// outside.</summary>
internal sealed class FakeExpander : I2cDevice
{
    private readonly Lock changing = new();
    private readonly List<int> levels = [];
    private readonly int pulls;
    private byte register;
    private int directions = 0xFFFF;
    private int latches;
    private bool isUnplugged;

    /// <summary>A part that has just got power.</summary>
    /// <param name="pulls">The levels of lines that nobody drives.</param>
    public FakeExpander(int pulls) => this.pulls = pulls;

    /// <summary>Lines that are shorted to ground.</summary>
    public int Shorted { get; init; }

    /// <summary>Every level that its lines have had, in order.</summary>
    public int[] Levels
    {
        get
        {
            lock (changing)
            {
                return [.. levels];
            }
        }
    }

    public override I2cConnectionSettings ConnectionSettings { get; } = new(1, 0x20);

    /// <summary>Takes its power away; it forgets everything.</summary>
    public void Unplug()
    {
        lock (changing)
        {
            (isUnplugged, directions, latches) = (true, 0xFFFF, 0);
        }
    }

    public void Plug()
    {
        lock (changing)
        {
            isUnplugged = false;
        }
    }

    public override void Read(Span<byte> buffer)
    {
        lock (changing)
        {
            Refuse();
            for (var at = 0; at < buffer.Length; at++)
            {
                buffer[at] = (byte)((Word(register & ~1) >> (8 * ((register + at) & 1))) & 0xFF);
            }
        }
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        lock (changing)
        {
            Refuse();
            register = buffer[0];
            for (var at = 1; at < buffer.Length; at++)
            {
                Set(register + at - 1, buffer[at]);
            }

            levels.Add(Level);
        }
    }

    public override void WriteRead(ReadOnlySpan<byte> writeBuffer, Span<byte> readBuffer)
    {
        Write(writeBuffer);
        Read(readBuffer);
    }

    private int Level => ((latches & ~directions) | (pulls & directions)) & ~Shorted;

    private int Word(int first) => first switch
    {
        0x00 => directions,
        0x12 => Level,
        0x14 => latches,
        _ => throw new InvalidOperationException($"register {first} is not played"),
    };

    private void Set(int at, byte value)
    {
        var shift = 8 * (at & 1);
        int Replaced(int word) => (word & ~(0xFF << shift)) | (value << shift);
        switch (at & ~1)
        {
            case 0x00:
                directions = Replaced(directions);
                break;
            case 0x12 or 0x14:
                latches = Replaced(latches);
                break;
        }
    }

    private void Refuse()
    {
        if (isUnplugged)
        {
            throw new IOException("Error 121 performing I2C data transfer.");
        }
    }
}
