using NodaTime;
using RackController.Hardware.Probes;
using RackController.Model;

namespace RackController.Hardware.Tests.Probes;

public sealed class AnalogueTests
{
    // As long as the converter takes at 860 conversions a second.
    private static readonly Duration everySample = Duration.FromSeconds(1) / 860;
    private MonotonicTime now = MonotonicTime.Zero;

    /// <summary>The effective value of a sine is its amplitude by the root of two (IEC 60050-103-02-03, from memory); a clamp of 30 A to
    /// 1 V, biased to the middle of the supply, so that 0.5 V of amplitude are 10.6 A.</summary>
    [Theory]
    [InlineData(50)]
    [InlineData(60)]
    public void ACurrentIsTheEffectiveValueOfWhatAlternates(double frequencyHz)
    {
        var reader = Reader(
            alternates: true, seconds => 1.65 + 0.5 * Math.Sin(2 * Math.PI * frequencyHz * seconds), new(0, 0), new(1, 30));
        Assert.Equal(0.5 / Math.Sqrt(2) * 30, reader.Read(), 0.05);
    }

    [Fact]
    public void HumOfTheMainsAddsNothingToALevel()
    {
        var reader = Reader(
            alternates: false, seconds => 2.5 + 0.2 * Math.Sin(2 * Math.PI * 50 * seconds), new(0.5, 0), new(4.5, 480));
        Assert.Equal(240, reader.Read(), 0.5);
    }

    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(1.0, 50)]
    [InlineData(1.5, 100)]
    [InlineData(2.0, 300)]
    [InlineData(0.4, -10)]
    [InlineData(3.0, 700)]
    public void BetweenAndBeyondItsPointsAStraightLineHolds(double voltageV, double value) => Assert.Equal(
        value, Reader(false, _ => 0, new(0.5, 0), new(1.5, 100), new(2.5, 500)).ValueOf(voltageV), 1e-9);

    [Fact]
    public void ItSamplesForWholePeriodsOfBothMainsFrequencies()
    {
        foreach (var frequencyHz in (double[])[50, 60])
        {
            Assert.Equal(0, AnalogueReader.Window.TotalSeconds * frequencyHz % 1, 1e-9);
        }
    }

    /// <summary>By the data sheet of the ADS1115 (from memory): 15 bits for 4.096 V, the conversion in register 0, and input 2 against
    /// ground chosen by 110 in bits 14 to 12 of register 1.</summary>
    [Fact]
    public void AConverterIsTurnedToItsInputAndReadInVolts()
    {
        var inputs = new double[] { 0.1, 0.2, 2.048, 0.4 };
        var chosen = -1;
        using var bus = new FakeBus(written => Answer(written));
        using var converter = new Converter(new Listening(bus, written =>
        {
            chosen = written is [1, var high, _] ? ((high >> 4) & 7) - 4 : chosen;
        }));
        converter.TurnTo(2);
        Assert.Equal(2, chosen);
        Assert.Equal(2.048, converter.VoltageV(), 1e-4);

        byte[] Answer(byte[] written)
        {
            var word = written[0] == 1 ? 0x8000 : (int)Math.Round(inputs[chosen] / 4.096 * 32768);
            return [(byte)(word >> 8), (byte)(word & 0xFF)];
        }
    }

    private AnalogueReader Reader(bool alternates, Func<double, double> voltageV, params CalibrationPoint[] points) => new(
        [.. points], alternates,
        () =>
        {
            now += everySample;
            return voltageV((now - MonotonicTime.Zero).TotalSeconds);
        },
        () => now);
}
