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

    /// <summary>By hand: of a sine that is cut off at zero the mean is amplitude / pi = 0.318, and what alternates about it has an
    /// effective value of sqrt(1/4 - 1/pi^2) = 0.386 of the amplitude, where 0.707 would be right. The second is lifted, but not enough;
    /// the third is what an input says that bears a little below ground.</summary>
    [Theory]
    [InlineData(0, 0.5, 0)]
    [InlineData(0.1, 0.5, 0)]
    [InlineData(0, 0.5, -0.3)]
    public void AWaveThatIsCutOffAtGroundIsNoCurrent(double zeroV, double amplitudeV, double floorV)
    {
        var reader = Reader(
            alternates: true, seconds => Math.Max(floorV, zeroV + amplitudeV * Math.Sin(2 * Math.PI * 50 * seconds)),
            new(0, 0), new(1, 30));
        var trouble = Assert.Throws<IOException>(() => reader.Read());
        Assert.Contains("goes below ground", trouble.Message, StringComparison.Ordinal);
        Assert.Contains("lift its zero to about half the supply", trouble.Message, StringComparison.Ordinal);
    }

    /// <summary>Half of 3.3 V, and as much swing as goes into it.</summary>
    [Fact]
    public void AWaveThatJustFitsIsACurrent() => Assert.Equal(
        1.6 / Math.Sqrt(2) * 30,
        Reader(alternates: true, seconds => 1.65 + 1.6 * Math.Sin(2 * Math.PI * 60 * seconds), new(0, 0), new(1, 30)).Read(), 0.1);

    /// <summary>A motor that is stuck or starts may want more than goes in: it reads too little, and must not be taken for no reading.
    /// </summary>
    [Theory]
    [InlineData(3)]
    [InlineData(30)]
    public void AWaveThatIsCutOffAtBothEndsIsStillACurrent(double amplitudeV) => Assert.InRange(
        Reader(
            alternates: true, seconds => Math.Clamp(1.63 + amplitudeV * Math.Sin(2 * Math.PI * 60 * seconds), 0, 3.3),
            new(0, 0), new(1, 30)).Read(),
        1.2 * 30, 1.65 * 30);

    /// <summary>A little hum and the converter's last digit, 0.125 mV (data sheet of the ADS1115, from memory), with a lift and without.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1.65)]
    public void SilenceIsNoCurrentAndNoTrouble(double zeroV)
    {
        var reader = Reader(
            alternates: true, seconds => Math.Round((zeroV + 0.002 * Math.Sin(2 * Math.PI * 50 * seconds)) / 0.000125) * 0.000125,
            new(0, 0), new(1, 30));
        Assert.Equal(0, reader.Read(), 0.06);
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
