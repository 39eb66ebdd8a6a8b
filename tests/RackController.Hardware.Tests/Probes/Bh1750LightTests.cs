using RackController.Hardware.Probes;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests.Probes;

/// <summary>Commands and arithmetic are those of the BH1750's data sheet (from memory): 0x01 powers on, 0x10 measures without a pause to
/// 1 lx, and a reading is two bytes, high one first, of 1.2 counts for each lux.</summary>
public sealed class Bh1750LightTests
{
    private const byte PowerOn = 0x01;
    private const byte Measure = 0x10;

    private readonly List<byte> commands = [];
    private readonly List<TimeSpan> waits = [];
    private (byte High, byte Low) counts = (0x83, 0x90);

    /// <summary>The worked example of the data sheet: 0x8390 is 28 067 lx (from memory).</summary>
    [Fact]
    public void TheCountsOfTheDataSheetComeToItsLux()
    {
        using var light = Light();
        Assert.Equal(28_067, light.Lux(), 0.5);
    }

    [Theory]
    [InlineData(0x00, 0x00, 0)]
    [InlineData(0xFF, 0xFF, 54_612.5)]
    public void TheEndsOfTheRangeAreReadings(byte high, byte low, double lux)
    {
        using var light = Light();
        counts = (high, low);
        Assert.Equal(lux, light.Lux(), 0.1);
    }

    [Fact]
    public void ItIsPoweredAndMeasuresAndHasItsTimeBeforeItIsBelieved()
    {
        using var light = Light();
        Assert.Equal(PowerOn, commands[0]);
        Assert.Equal(Measure, commands[^1]);
        Assert.Equal(TimeSpan.FromMilliseconds(200), Assert.Single(waits));
    }

    [Fact]
    public void APartThatWasUnpluggedIsSetUpAnew()
    {
        var buses = new List<FakeBus>();
        var ports = new ProbePorts(_ => Added(buses), _ => throw new InvalidOperationException("no meter here"));
        var site = Sites.OneRack();
        var sensor = site.Sensors[0] with { Kind = SensorKind.LightLevel, TierNumber = 1 };
        site = site with { Sensors = site.Sensors.SetItem(0, sensor) };
        using var readers = new ProbeReaders(site, ports, () => default);
        var probe = new PartProbe(sensor.Id, new BusPart("canopy", BusPartKind.Bh1750, Bus: 1, Address: 0x23));
        var reader = readers.Of(probe);
        Assert.Equal(28_067, reader.Read(), 0.5);
        buses[0].IsUnplugged = true;
        Assert.Throws<IOException>(() => reader.Read());
        Assert.Equal(28_067, reader.Read(), 0.5);
        Assert.Equal((2, "I2C bus 1"), (buses.Count, ProbeReaders.BusOf(probe)));
        Assert.Equal("Bh1750 'canopy' at 0x23", ProbeReaders.WiringOf(probe));
    }

    private FakeBus Added(List<FakeBus> buses)
    {
        buses.Add(Bus());
        return buses[^1];
    }

    private Bh1750Light Light() => new(Bus(), waits.Add);

    private FakeBus Bus() => new(_ => [counts.High, counts.Low]) { Written = bytes => commands.AddRange(bytes) };
}
