using RackController.Hardware.Probes;

namespace RackController.Hardware.Tests.Probes;

/// <summary>Over a folder that plays <c>/sys/bus/w1/devices</c>. The form of the file is that of <c>w1_slave_show</c> in Linux
/// <c>drivers/w1/slaves/w1_therm.c</c>: nine bytes, their check sum, <c>YES</c> or <c>NO</c>, and thousandths of a degree.</summary>
public sealed class OneWireThermometerTests : IDisposable
{
    private const string Code = "28-0316a2794bff";

    // Bytes of the DS18B20 that stand for temperatures, in sixteenths of a degree with the low byte first (data sheet, from memory:
    // 0x0191 is 25.0625 °C, 0x0550 85 °C, 0xFF5E -10.125 °C, 0x07D0 125 °C). The last is not looked at: the kernel has judged it.
    private const string Warm = "91 01 4b 46 7f ff 0f 10 25";
    private const string PowerUp = "50 05 4b 46 7f ff 0c 10 1c";
    private const string ReallyHot = "50 05 4b 46 7f ff 10 10 2b";
    private const string Weak = "ff 07 4b 46 7f ff 01 10 25";
    private const string Shorted = "00 00 00 00 00 00 00 00 00";
    private const string Freezing = "00 00 4b 46 7f ff 10 10 fd";

    private readonly string devices = Directory.CreateTempSubdirectory("one-wire-").FullName;
    private readonly OneWireThermometer thermometer;

    public OneWireThermometerTests()
    {
        Directory.CreateDirectory(Path.Combine(devices, Code));
        thermometer = new OneWireThermometer(devices, Code);
    }

    public void Dispose() => Directory.Delete(devices, recursive: true);

    [Theory]
    [InlineData(Warm, 25_062, 25.062)]
    [InlineData("5e ff 4b 46 7f ff 02 10 3e", -10_125, -10.125)]
    [InlineData("d0 07 4b 46 7f ff 00 10 11", 125_000, 125)]
    [InlineData(Freezing, 0, 0)]
    public void WhatTheDriverSaysIsThousandthsOfADegree(string bytes, int millis, double celsius)
    {
        Say(bytes, "YES", millis);
        Assert.Equal(celsius, thermometer.Read(), 1e-9);
    }

    [Fact]
    public void AWrongCheckSumIsNoReadingEvenWhereTheDriverShowsTheOneBefore()
    {
        Say(Warm, "NO", 25_062);
        Assert.Equal("what it says does not match its check sum", Refusal());
    }

    /// <summary>What the driver does where the thermometer does not answer: its file is there and empty.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("\n")]
    [InlineData(Warm + " : crc=25 YES\n" + Warm + " t=\n")]
    [InlineData("91 01 : crc=25 YES\n91 01 t=25062\n")]
    public void SilenceAndNonsenseAreNoReading(string text)
    {
        Write(text);
        Assert.StartsWith("it did not answer", Refusal(), StringComparison.Ordinal);
    }

    /// <summary>Eight zeros have the check sum zero, since that of the bus begins with zero (data sheet, from memory), and the driver
    /// says YES to them.</summary>
    [Fact]
    public void ZerosOfAShortedWireAreNoFreezingWater()
    {
        Say(Shorted, "YES", 0);
        Assert.Equal("its data line is shorted to ground", Refusal());
    }

    [Fact]
    public void WhatItSaysAfterPowerUpIsNoReadingHoweverOftenItSaysSo()
    {
        Say(PowerUp, "YES", 85_000);
        Assert.StartsWith("it has been without power", Refusal(), StringComparison.Ordinal);
        Assert.StartsWith("it has been without power", Refusal(), StringComparison.Ordinal);
        Say(Warm, "YES", 25_062);
        Assert.Equal(25.062, thermometer.Read());
        Say(ReallyHot, "YES", 85_000);
        Assert.StartsWith("it has been without power", Refusal(), StringComparison.Ordinal);
        Assert.StartsWith("it has been without power", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void WaterThatIsReallySoHotIsBelievedAndThePowerUpValueIsNotEvenThere()
    {
        Say(ReallyHot, "YES", 84_500);
        Assert.Equal(84.5, thermometer.Read());
        Say(ReallyHot, "YES", 85_000);
        Assert.Equal(85, thermometer.Read());
        Say(PowerUp, "YES", 85_000);
        Assert.StartsWith("it has been without power", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void PowerThatDoesNotLastIsNamed()
    {
        Say(Weak, "YES", 127_937);
        Assert.StartsWith("its power does not last", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void OneThatIsOnNoBusIsNamedAndOneWithoutItsDriverToo()
    {
        Assert.Equal($"no driver reads {Code}, so load w1-therm", Refusal());
        Directory.Delete(Path.Combine(devices, Code));
        Assert.Equal($"no 1-wire bus lists {Code}", Refusal());
    }

    [Fact]
    public void OneThatWasUnpluggedIsReadAgainOnceItIsBack()
    {
        Say(Warm, "YES", 25_062);
        thermometer.Read();
        Directory.Delete(Path.Combine(devices, Code), recursive: true);
        Assert.Equal($"no 1-wire bus lists {Code}", Refusal());
        Directory.CreateDirectory(Path.Combine(devices, Code));
        Say(Warm, "YES", 25_062);
        Assert.Equal(25.062, thermometer.Read());
    }

    private string Refusal() => Assert.Throws<IOException>(() => thermometer.Read()).Message;

    private void Say(string bytes, string verdict, int millis) =>
        Write($"{bytes} : crc={bytes[^2..]} {verdict}\n{bytes} t={millis}\n");

    private void Write(string text) => File.WriteAllText(Path.Combine(devices, Code, "w1_slave"), text);
}
