using System.Buffers.Binary;
using System.Text;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Gets back what a <see cref="ByteWriter"/> put into bytes.</summary>
/// <remarks>Bytes that nobody put there end in a <see cref="FormatException"/>, and never in anything else.</remarks>
internal ref struct ByteReader(ReadOnlySpan<byte> bytes)
{
    private static readonly UTF8Encoding strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private ReadOnlySpan<byte> rest = bytes;

    public readonly bool IsAtEnd => rest.IsEmpty;

    public byte Byte() => Take(1)[0];

    public ulong Unsigned()
    {
        ulong value = 0;
        for (var shift = 0; shift < 70; shift += 7)
        {
            var next = Byte();
            value |= (ulong)(next & 0x7f) << shift;
            if (next < 0x80)
            {
                return value;
            }
        }

        throw new FormatException("a number has no end");
    }

    public long Signed()
    {
        var value = Unsigned();
        return unchecked((long)(value >> 1) ^ -(long)(value & 1));
    }

    public float Single() => BinaryPrimitives.ReadSingleLittleEndian(Take(sizeof(float)));

    public double Double() => BinaryPrimitives.ReadDoubleLittleEndian(Take(sizeof(double)));

    public uint Word() => BinaryPrimitives.ReadUInt32LittleEndian(Take(sizeof(uint)));

    /// <summary>How many of something follow, each of at least one byte.</summary>
    public int Count()
    {
        var count = Unsigned();
        return count <= (ulong)rest.Length ? (int)count : throw new FormatException("more is announced than there is");
    }

    /// <summary>A place in a list.</summary>
    public int Index()
    {
        var index = Unsigned();
        return index <= ushort.MaxValue ? (int)index : throw new FormatException("a place lies beyond every list");
    }

    public string Text()
    {
        var bytes = Take(Count());
        try
        {
            return strict.GetString(bytes);
        }
        catch (ArgumentException e)
        {
            throw new FormatException("a text is none", e);
        }
    }

    public Duration Length()
    {
        var (days, nanoseconds) = (Signed(), Signed());
        return days is >= -MostDays and <= MostDays && Math.Abs((decimal)nanoseconds) < NodaConstants.NanosecondsPerDay
            ? Duration.FromDays((int)days) + Duration.FromNanoseconds(nanoseconds)
            : throw new FormatException("a time lies beyond every calendar");
    }

    public Instant Wall()
    {
        // The calendar reaches back further than any length does.
        var since = Length();
        return since < Instant.MaxValue - NodaConstants.UnixEpoch
            ? NodaConstants.UnixEpoch + since
            : throw new FormatException("a time lies beyond every calendar");
    }

    public Moment Moment()
    {
        var nanoseconds = Signed();
        return nanoseconds >= 0
            ? new Moment(new MonotonicTime(nanoseconds), Wall(), Byte() != 0)
            : throw new FormatException("a time lies before every clock");
    }

    private const long MostDays = 4_000_000;

    private ReadOnlySpan<byte> Take(int count)
    {
        if (count > rest.Length)
        {
            throw new FormatException("it ends in the middle");
        }

        var taken = rest[..count];
        rest = rest[count..];
        return taken;
    }
}
