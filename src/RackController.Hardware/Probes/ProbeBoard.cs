using System.Device.I2c;
using RackController.Model;

namespace RackController.Hardware.Probes;

/// <summary>The sensors of a site that measure a value: each bus has a thread of its own, and the scan takes over what was said
/// last.</summary>
/// <param name="buses">The buses.</param>
internal sealed class ProbeBoard(ProbeBus[] buses) : IDisposable
{
    private readonly ProbeSlot[] slots = [.. buses.SelectMany(bus => bus.Slots)];

    /// <summary>Begins to read.</summary>
    /// <param name="site">The site.</param>
    /// <param name="probes">How each sensor is read.</param>
    /// <param name="open">Opens a part on its bus; may throw <see cref="IOException"/>, and is asked again then.</param>
    /// <param name="clock">The clock that the scan lives by, for any thread.</param>
    public static ProbeBoard Begin(Site site, IEnumerable<Probe> probes, Func<BusPart, I2cDevice> open, Func<MonotonicTime> clock)
    {
        var air = new Dictionary<BusPart, BusPartOnDemand<IAirPart>>();
        var converters = new Dictionary<BusPart, BusPartOnDemand<Converter>>();
        return new ProbeBoard([.. probes.GroupBy(BusOf).Select(bus => new ProbeBus(bus.Key, [.. bus.Select(OnBus)], clock))]);

        ProbeOnBus OnBus(Probe probe) => new(site[probe.Sensor].Name, WiringOf(probe), ReaderOf(probe), new ProbeSlot(probe.Sensor));

        IProbeReader ReaderOf(Probe probe) => probe switch
        {
            OneWireProbe wire => OneWireThermometer.Named(wire.Code),
            AirProbe one => new AirReader(Shared(air, one.Part, () => Opened(open(one.Part), AirOf(one.Part))), site[one.Sensor].Kind),
            AnalogueProbe one => new ConverterReader(
                Shared(converters, one.Part, () => Opened(open(one.Part), device => new Converter(device))), one,
                site[one.Sensor].Kind, clock),
            _ => throw new InvariantBrokenException($"every probe has its reader, {probe.GetType().Name} too"),
        };
    }

    /// <summary>Gives the scan what every sensor said last.</summary>
    public void CopyTo(Readings readings)
    {
        foreach (var slot in slots)
        {
            slot.CopyTo(readings);
        }
    }

    /// <summary>One line about every sensor, for the log.</summary>
    public IEnumerable<string> Describe() => buses.SelectMany(bus => bus.Describe());

    /// <inheritdoc/>
    public void Dispose() => Array.ForEach(buses, bus => bus.Dispose());

    private static BusPartOnDemand<TPart> Shared<TPart>(
        Dictionary<BusPart, BusPartOnDemand<TPart>> known, BusPart part, Func<TPart> setUp)
        where TPart : class, IDisposable
    {
        known.TryAdd(part, new BusPartOnDemand<TPart>(setUp));
        return known[part];
    }

    // A part that does not answer while it is set up must not leave its bus open, once a second for days.
    private static TPart Opened<TPart>(I2cDevice device, Func<I2cDevice, TPart> setUp)
    {
        try
        {
            return setUp(device);
        }
        catch
        {
            device.Dispose();
            throw;
        }
    }

    private static Func<I2cDevice, IAirPart> AirOf(BusPart part) => part.Kind == BusPartKind.Sht3x
        ? device => new Sht3xAir(device)
        : device => new Bme280Air(device);

    private static string BusOf(Probe probe) => PartOf(probe) is { } part ? $"I2C bus {part.Bus}" : "1-wire";

    private static string WiringOf(Probe probe) => probe switch
    {
        OneWireProbe wire => wire.Code,
        AnalogueProbe one => $"input {one.Input} of {NameOf(one.Part)}",
        _ => NameOf(PartOf(probe)!),
    };

    private static string NameOf(BusPart part) => $"{part.Kind} '{part.Name}' at 0x{part.Address:x2}";

    private static BusPart? PartOf(Probe probe) => probe switch
    {
        AirProbe one => one.Part,
        AnalogueProbe one => one.Part,
        _ => null,
    };
}

/// <summary>Temperature or humidity of a part that measures the air.</summary>
internal sealed class AirReader(BusPartOnDemand<IAirPart> part, SensorKind kind) : IProbeReader
{
    /// <inheritdoc/>
    public double Read() => part.Ask(air => kind == SensorKind.AirHumidity ? air.HumidityPercent() : air.TemperatureC());
}

/// <summary>What an input of a converter stands for.</summary>
internal sealed class ConverterReader(
    BusPartOnDemand<Converter> part, AnalogueProbe probe, SensorKind kind, Func<MonotonicTime> clock) : IProbeReader
{
    private readonly bool alternates = kind is SensorKind.CircuitCurrent or SensorKind.PumpCurrent;

    /// <inheritdoc/>
    public double Read() => part.Ask(converter =>
    {
        converter.TurnTo(probe.Input);
        return new AnalogueReader(probe.Points, alternates, converter.VoltageV, clock).Read();
    });
}
