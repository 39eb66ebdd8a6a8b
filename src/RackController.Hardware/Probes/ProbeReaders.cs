using System.Device.I2c;
using RackController.Model;

namespace RackController.Hardware.Probes;

/// <summary>Who reads each sensor that measures a value. Sensors of one part share what speaks to it.</summary>
/// <param name="site">The site.</param>
/// <param name="ports">Opens what they are on.</param>
/// <param name="clock">The clock that the scan lives by, for any thread.</param>
internal sealed class ProbeReaders(Site site, ProbePorts ports, Func<MonotonicTime> clock) : IDisposable
{
    private readonly Dictionary<PulseProbe, BusPartOnDemand<IPulseLine>> pulses = [];
    private readonly Dictionary<BusPart, BusPartOnDemand<IAirPart>> air = [];
    private readonly Dictionary<BusPart, BusPartOnDemand<Bh1750Light>> lights = [];
    private readonly Dictionary<BusPart, BusPartOnDemand<Converter>> converters = [];

    /// <summary>The reader of a sensor.</summary>
    public IProbeReader Of(Probe probe) => probe switch
    {
        OneWireProbe wire => new OneWireThermometer(OneWireThermometer.Devices, wire.Code),
        PartProbe { Part.Kind: BusPartKind.Bh1750 } one => new LightReader(
            Shared(lights, one.Part, () => Opened(ports.Part(one.Part), device => new Bh1750Light(device, Thread.Sleep)))),
        PartProbe one => new AirReader(Shared(air, one.Part, () => Opened(ports.Part(one.Part), AirOf(one.Part))), site[one.Sensor].Kind),
        AnalogueProbe one => new ConverterReader(
            Shared(converters, one.Part, () => Opened(ports.Part(one.Part), device => new Converter(device))), one,
            site[one.Sensor].Kind, clock),
        PulseProbe one => new FlowMeterReader(
            pulses[one] = new BusPartOnDemand<IPulseLine>(() => ports.Pulses(one)), one.PulsesPerL),
        _ => throw new InvariantBrokenException($"every probe has its reader, {probe.GetType().Name} too"),
    };

    /// <summary>The bus that a sensor is on, for people.</summary>
    public static string BusOf(Probe probe) => probe.Carrier is { } part ? $"I2C bus {part.Bus}"
        : probe is PulseProbe ? "pulses" : "1-wire";

    /// <summary>Where on its bus a sensor is, for people.</summary>
    public static string WiringOf(Probe probe) => probe switch
    {
        OneWireProbe wire => wire.Code,
        PulseProbe pulse => pulse.Line.ToString(),
        AnalogueProbe one => $"input {one.Input} of {NameOf(one.Part)}",
        _ => NameOf(probe.Carrier!),
    };

    /// <summary>Lets every part go. Nobody may be reading.</summary>
    public void Dispose()
    {
        foreach (var part in air.Values)
        {
            part.Dispose();
        }

        foreach (var part in lights.Values)
        {
            part.Dispose();
        }

        foreach (var part in converters.Values)
        {
            part.Dispose();
        }

        foreach (var line in pulses.Values)
        {
            line.Dispose();
        }
    }

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

    private static string NameOf(BusPart part) => $"{part.Kind} '{part.Name}' at 0x{part.Address:x2}";
}

/// <summary>Temperature or humidity of a part that measures the air.</summary>
internal sealed class AirReader(BusPartOnDemand<IAirPart> part, SensorKind kind) : IProbeReader
{
    /// <inheritdoc/>
    public double Read() => part.Ask(air => kind == SensorKind.AirHumidity ? air.HumidityPercent() : air.TemperatureC());
}

/// <summary>Illuminance of a part that measures it.</summary>
internal sealed class LightReader(BusPartOnDemand<Bh1750Light> part) : IProbeReader
{
    /// <inheritdoc/>
    public double Read() => part.Ask(light => light.Lux());
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
