using Iot.Device.OneWire;

namespace RackController.Hardware.Probes;

/// <summary>A thermometer on the kernel's 1-wire bus. Asking it takes most of a second. After power-up it says 85 °C, with a check sum that
/// is right, until it has measured anything.</summary>
/// <param name="read">Asks it, °C; throws <see cref="IOException"/> where it does not answer or its check sum is wrong.</param>
internal sealed class OneWireThermometer(Func<double> read) : IProbeReader
{
    // What the register holds after power-up (data sheet of the DS18B20, from memory).
    private const double PowerUpC = 85;

    // Neither water nor air at a rack changes by more from one reading to the next.
    private const double MostStepK = 10;
    private double lastC = double.NaN;

    /// <summary>The thermometer with a name on the bus.</summary>
    public static OneWireThermometer Named(string code) => new(() => Ask(code));

    /// <inheritdoc/>
    public double Read()
    {
        var beforeC = lastC;
        lastC = read();
        return lastC != PowerUpC || Math.Abs(lastC - beforeC) <= MostStepK
            ? lastC
            : throw new IOException("it has been without power and has measured nothing since");
    }

    private static double Ask(string code)
    {
        try
        {
            var bus = OneWireBus.EnumerateBusIds().FirstOrDefault(bus => new OneWireBus(bus).EnumerateDeviceIds().Contains(code))
                ?? throw new IOException($"no 1-wire bus lists {code}");
            return new OneWireThermometerDevice(bus, code).ReadTemperature().DegreesCelsius;
        }
        catch (InvalidOperationException failure)
        {
            // What the library throws where the check sum is wrong.
            throw new IOException(failure.Message, failure);
        }
    }
}
