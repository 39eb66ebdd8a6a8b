using System.Device.I2c;

namespace RackController.Hardware.Tests.Probes;

/// <summary>A part on a bus whose writes somebody listens to.</summary>
internal sealed class Listening(I2cDevice inner, Action<byte[]> written) : I2cDevice
{
    public override I2cConnectionSettings ConnectionSettings => inner.ConnectionSettings;

    public override void Read(Span<byte> buffer) => inner.Read(buffer);

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        written(buffer.ToArray());
        inner.Write(buffer);
    }

    public override void WriteRead(ReadOnlySpan<byte> writeBuffer, Span<byte> readBuffer)
    {
        Write(writeBuffer);
        Read(readBuffer);
    }
}
