using RackController.Model;

namespace RackController.Control;

/// <summary>Puts what a sensor says into bytes and gets it back, bit for bit: its place, one byte that says how the rest is put
/// down, its value and its age. A contact measured at this scan takes two bytes, a measured value six or ten.</summary>
internal static class ReadingCode
{
    private const int AgeNone = 0 << 2;
    private const int AgePast = 1 << 2;
    private const int AgeRaw = 2 << 2;
    private const int ValueZero = 0 << 4;
    private const int ValueOne = 1 << 4;
    private const int ValueSingle = 2 << 4;
    private const int ValueDouble = 3 << 4;

    public static void Put(int sensor, in Reading reading, MonotonicTime now, ByteWriter to)
    {
        var isPast = reading.TakenAt < now && reading.TakenAt.Nanoseconds >= 0;
        var age = reading.TakenAt == now ? AgeNone : isPast ? AgePast : AgeRaw;
        var value = FormOf(reading.Value);
        to.Put((ulong)sensor);
        to.Put((byte)((int)reading.Quality | age | value));
        if (value == ValueSingle)
        {
            to.Put((float)reading.Value);
        }
        else if (value == ValueDouble)
        {
            to.Put(reading.Value);
        }

        if (age == AgePast)
        {
            to.Put((ulong)(now.Nanoseconds - reading.TakenAt.Nanoseconds));
        }
        else if (age == AgeRaw)
        {
            to.Put(reading.TakenAt.Nanoseconds);
        }
    }

    /// <exception cref="FormatException">There is none.</exception>
    public static RecordedReading Get(ref ByteReader from, MonotonicTime now)
    {
        var sensor = from.Index();
        var form = from.Byte();
        var value = (form & 0x30) switch
        {
            ValueZero => 0,
            ValueOne => 1,
            ValueSingle => from.Single(),
            _ => from.Double(),
        };
        var takenAt = (form & 0x0c) switch
        {
            AgeNone => now,
            AgePast => Before(now, from.Unsigned()),
            _ => new MonotonicTime(from.Signed()),
        };
        var quality = (ReadingQuality)(form & 0x03);
        return Enum.IsDefined(quality)
            ? new RecordedReading(sensor, new Reading(value, quality, takenAt))
            : throw new FormatException("a reading is of no quality");
    }

    private static MonotonicTime Before(MonotonicTime now, ulong nanoseconds) => nanoseconds <= long.MaxValue
        ? new MonotonicTime(now.Nanoseconds - (long)nanoseconds)
        : throw new FormatException("a reading is older than every clock");

    // By bits: zero below zero and what is not a number come back as they were.
    private static int FormOf(double value)
    {
        var bits = BitConverter.DoubleToInt64Bits(value);
        return bits == BitConverter.DoubleToInt64Bits(0.0) ? ValueZero
            : bits == BitConverter.DoubleToInt64Bits(1.0) ? ValueOne
            : bits == BitConverter.DoubleToInt64Bits((float)value) ? ValueSingle
            : ValueDouble;
    }
}
