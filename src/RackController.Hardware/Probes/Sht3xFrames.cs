using System.Device.I2c;

namespace RackController.Hardware.Probes;

/// <summary>
/// An SHT3x on its bus whose answers are checked. The library's own class checks them too, and where a check sum is wrong it says nothing
/// and keeps the old value, which would look like a reading of now.
/// </summary>
/// <param name="inner">The part on its bus.</param>
internal sealed class Sht3xFrames(I2cDevice inner) : I2cDevice
{
    // Two bytes of a value and one of its check sum.
    private const int WordLength = 3;

    // Polynomial and start of its CRC-8, by its data sheet, in which 0xBEEF comes to 0x92 (from memory).
    private const int Polynomial = 0x131;
    private const int Begin = 0xFF;

    /// <inheritdoc/>
    public override I2cConnectionSettings ConnectionSettings => inner.ConnectionSettings;

    /// <summary>The check sum of two bytes.</summary>
    public static byte CheckSum(byte high, byte low)
    {
        var sum = Begin;
        foreach (var part in (ReadOnlySpan<byte>)[high, low])
        {
            sum ^= part;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum << 1) ^ ((sum & 0x80) != 0 ? Polynomial : 0);
            }
        }

        return (byte)(sum & 0xFF);
    }

    /// <inheritdoc/>
    public override void Read(Span<byte> buffer)
    {
        inner.Read(buffer);
        for (var at = 0; at + WordLength <= buffer.Length; at += WordLength)
        {
            if (CheckSum(buffer[at], buffer[at + 1]) != buffer[at + 2])
            {
                throw new IOException("what it says does not match its check sum");
            }
        }
    }

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer) => inner.Write(buffer);

    /// <inheritdoc/>
    public override void WriteRead(ReadOnlySpan<byte> writeBuffer, Span<byte> readBuffer)
    {
        Write(writeBuffer);
        Read(readBuffer);
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }
}
