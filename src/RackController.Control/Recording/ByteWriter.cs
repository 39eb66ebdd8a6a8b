using System.Buffers.Binary;
using System.Text;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Puts numbers and words into bytes, small numbers into few of them. Its room is used again: what fits allocates
/// nothing.</summary>
internal sealed class ByteWriter
{
    private byte[] bytes = new byte[16 * 1024];

    public int Length { get; private set; }

    public void Clear() => Length = 0;

    public byte[] ToArray() => bytes.AsSpan(0, Length).ToArray();

    public void Put(byte value) => Room(1)[0] = value;

    /// <summary>A number from 0, seven bits to a byte, lowest first.</summary>
    public void Put(ulong value)
    {
        while (value >= 0x80)
        {
            Put((byte)(value & 0x7f | 0x80));
            value >>= 7;
        }

        Put((byte)value);
    }

    /// <summary>A number of either sign.</summary>
    public void Put(long value) => Put(unchecked((ulong)(value << 1) ^ (ulong)(value >> 63)));

    public void Put(float value) => BinaryPrimitives.WriteSingleLittleEndian(Room(sizeof(float)), value);

    public void Put(double value) => BinaryPrimitives.WriteDoubleLittleEndian(Room(sizeof(double)), value);

    public void Put(uint value) => BinaryPrimitives.WriteUInt32LittleEndian(Room(sizeof(uint)), value);

    public void Put(string text)
    {
        var count = Encoding.UTF8.GetByteCount(text);
        Put((ulong)count);
        Encoding.UTF8.GetBytes(text, Room(count));
    }

    /// <summary>A length of time, however long.</summary>
    public void Put(Duration length)
    {
        Put((long)length.Days);
        Put(length.NanosecondOfDay);
    }

    public void Put(Instant wall) => Put(wall - NodaConstants.UnixEpoch);

    public void Put(in Moment moment)
    {
        Put(moment.Monotonic.Nanoseconds);
        Put(moment.Wall);
        Put(moment.WallTrusted ? (byte)1 : (byte)0);
    }

    private Span<byte> Room(int count)
    {
        if (Length + count > bytes.Length)
        {
            Array.Resize(ref bytes, Math.Max(Length + count, 2 * bytes.Length));
        }

        var room = bytes.AsSpan(Length, count);
        Length += count;
        return room;
    }
}
