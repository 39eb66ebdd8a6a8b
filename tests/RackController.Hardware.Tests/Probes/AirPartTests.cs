using RackController.Hardware.Probes;

namespace RackController.Hardware.Tests.Probes;

public sealed class AirPartTests
{
    /// <summary>The worked example of the part's data sheet: 0xBEEF has the check sum 0x92 (from memory).</summary>
    [Fact]
    public void TheCheckSumIsThatOfTheDataSheet() => Assert.Equal(0x92, Sht3xFrames.CheckSum(0xBE, 0xEF));

    /// <summary>T = -45 + 175 S / 65535 and RH = 100 S / 65535, by the data sheet (from memory): half of the range is 42.5 °C and 50 %. The
    /// library rounds to tenths.</summary>
    [Fact]
    public void TemperatureAndHumidityFollowFromTheWordsOfThePart()
    {
        using var air = new Sht3xAir(new FakeBus(_ => Frame(0x8000, 0x8000)));
        Assert.Equal(42.5, air.TemperatureC(), 0.051);
        Assert.Equal(50, air.HumidityPercent(), 0.051);
    }

    /// <summary>The library's class keeps the value before and says nothing.</summary>
    [Fact]
    public void AWrongCheckSumIsNoReadingEvenWhereOneWasThereBefore()
    {
        var frame = Frame(0x6666, 0x8000);
        using var air = new Sht3xAir(new FakeBus(_ => frame));
        Assert.Equal(25, air.TemperatureC(), 0.051);
        frame[0] ^= 0x10;
        Assert.Throws<IOException>(() => air.TemperatureC());
        frame[0] ^= 0x10;
        frame[5] ^= 1;
        Assert.Throws<IOException>(() => air.TemperatureC());
    }

    [Fact]
    public void APartThatFailedIsSetUpAnewWhenItIsBack()
    {
        var buses = new List<FakeBus>();
        var part = new BusPartOnDemand<IAirPart>(() =>
        {
            buses.Add(new FakeBus(_ => Frame(0x6666, 0x8000)));
            return new Sht3xAir(buses[^1]);
        });
        Assert.Equal(25, part.Ask(air => air.TemperatureC()), 0.051);
        buses[0].IsUnplugged = true;
        Assert.Throws<IOException>(() => part.Ask(air => air.TemperatureC()));
        Assert.Equal(1, buses[0].Disposals);
        Assert.Equal(25, part.Ask(air => air.TemperatureC()), 0.051);
        Assert.Equal(2, buses.Count);
    }

    private static byte[] Frame(int temperature, int humidity)
    {
        var (high, low) = ((byte)(temperature >> 8), (byte)(temperature & 0xFF));
        var (damp, dry) = ((byte)(humidity >> 8), (byte)(humidity & 0xFF));
        return [high, low, Sht3xFrames.CheckSum(high, low), damp, dry, Sht3xFrames.CheckSum(damp, dry)];
    }
}
