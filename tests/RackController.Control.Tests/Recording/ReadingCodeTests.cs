using RackController.Model;

namespace RackController.Control.Tests.Recording;

/// <summary>A reading comes back to the last bit, and takes little room where it is what most readings are.</summary>
public class ReadingCodeTests
{
    private static readonly MonotonicTime now = MonotonicTime.FromMilliseconds(60_000);

    /// <summary>A byte for the sensor, one for the form, and four or eight for what is neither 0 nor 1.</summary>
    [Theory]
    [InlineData(0.0, 2)]
    [InlineData(1.0, 2)]
    [InlineData(0.5, 6)]
    [InlineData(-0.0, 6)]
    [InlineData(-1.0, 6)]
    [InlineData(double.PositiveInfinity, 6)]
    [InlineData(0.1, 10)]
    [InlineData(double.Epsilon, 10)]
    public void AValueComesBackToTheLastBit(double value, int length)
    {
        var bytes = Put(new Reading(value, ReadingQuality.Good, now));
        Assert.Equal(length, bytes.Length);
        Assert.Equal(BitConverter.DoubleToInt64Bits(value), BitConverter.DoubleToInt64Bits(Get(bytes).Reading.Value));
    }

    /// <summary>An age takes a byte for every seven bits of its nanoseconds.</summary>
    [Theory]
    [InlineData(60_000_000_000, 2)]
    [InlineData(59_999_999_999, 3)]
    [InlineData(0, 8)]
    [InlineData(-1, 3)]
    [InlineData(60_000_000_001, 8)]
    [InlineData(long.MinValue, 12)]
    [InlineData(long.MaxValue, 12)]
    public void ATimeComesBackToTheLastNanosecond(long nanoseconds, int length)
    {
        var bytes = Put(new Reading(0, ReadingQuality.Good, new MonotonicTime(nanoseconds)));
        Assert.Equal(length, bytes.Length);
        Assert.Equal(nanoseconds, Get(bytes).Reading.TakenAt.Nanoseconds);
    }

    [Fact]
    public void SensorAndQualityComeBack()
    {
        foreach (var quality in Enum.GetValues<ReadingQuality>())
        {
            var read = Get(Put(new Reading(1, quality, now), sensor: 300));
            Assert.Equal((300, quality), (read.Sensor, read.Reading.Quality));
        }
    }

    private static byte[] Put(Reading reading, int sensor = 0)
    {
        var writer = new ByteWriter();
        ReadingCode.Put(sensor, reading, now, writer);
        return writer.ToArray();
    }

    private static RecordedReading Get(byte[] bytes)
    {
        var reader = new ByteReader(bytes);
        var read = ReadingCode.Get(ref reader, now);
        Assert.True(reader.IsAtEnd);
        return read;
    }
}
