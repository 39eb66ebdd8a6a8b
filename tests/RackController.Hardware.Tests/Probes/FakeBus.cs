using System.Device.I2c;

namespace RackController.Hardware.Tests.Probes;

/// <summary>A part on a bus that answers from its registers as a test says.</summary>
internal sealed class FakeBus : I2cDevice
{
    private readonly Func<byte[], byte[]> answer;
    private byte[] written = [];

    /// <summary>A part.</summary>
    /// <param name="answer">What it says after such bytes were written to it; at least as long as what is read.</param>
    public FakeBus(Func<byte[], byte[]> answer) => this.answer = answer;

    /// <summary>Whether it is not there at all.</summary>
    public bool IsUnplugged { get; set; }

    /// <summary>Told of all that is written to it.</summary>
    public Action<byte[]> Written { get; init; } = _ => { };

    /// <summary>How often it was let go.</summary>
    public int Disposals { get; private set; }

    public override I2cConnectionSettings ConnectionSettings { get; } = new(1, 0x40);

    public override void Read(Span<byte> buffer)
    {
        Refuse();
        answer(written).AsSpan(0, buffer.Length).CopyTo(buffer);
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        Refuse();
        written = buffer.ToArray();
        Written(written);
    }

    public override void WriteRead(ReadOnlySpan<byte> writeBuffer, Span<byte> readBuffer)
    {
        Write(writeBuffer);
        Read(readBuffer);
    }

    protected override void Dispose(bool disposing)
    {
        Disposals++;
        base.Dispose(disposing);
    }

    private void Refuse()
    {
        if (IsUnplugged)
        {
            throw new IOException("Error 121 performing I2C data transfer.");
        }
    }
}
