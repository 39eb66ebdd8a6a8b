using System.Globalization;
using System.Text.RegularExpressions;

namespace RackController.Hardware.Probes;

/// <summary>
/// A thermometer on a 1-wire bus of the kernel, read from the file of its driver, whose every reading measures anew and so takes most of a
/// second. That file also gives the bytes that the thermometer sent, without which two of its lies look like readings: the driver's newer
/// file <c>temperature</c> does not, and the library reads by the way of a bus, which need not be where it looks.
/// </summary>
/// <param name="devices">The folder of the devices on 1-wire buses: <see cref="Devices"/>.</param>
/// <param name="code">The thermometer's name there.</param>
internal sealed partial class OneWireThermometer(string devices, string code) : IProbeReader
{
    /// <summary>Where the kernel lists what is on its 1-wire buses.</summary>
    public const string Devices = "/sys/bus/w1/devices";

    // What the register holds after power-up until something was measured, and what it says where the power does not last for that; of
    // the byte that is only then 0x0C (data sheet of the DS18B20 from memory, and Documentation/w1/slaves/w1_therm.rst of Linux).
    private const double PowerUpC = 85;
    private const double WeakC = 127.937;
    private const int TellingByte = 6;
    private const string PowerUpByte = "0c";

    // Neither water nor air at a rack changes by more from one reading to the next.
    private const double MostStepK = 10;
    private const double MillisPerC = 1000;

    private double lastC = double.NaN;

    /// <inheritdoc/>
    public double Read()
    {
        var said = Answer().Match(Text());
        if (!said.Success)
        {
            // The driver says nothing at all where the thermometer did not answer, and today where the check sum is wrong.
            throw new IOException("it did not answer, or not in a way that can be understood");
        }

        if (said.Groups["verdict"].ValueSpan is not "YES")
        {
            throw new IOException("what it says does not match its check sum");
        }

        return lastC = Believed(
            said.Groups["bytes"].Value.Split(' '),
            int.Parse(said.Groups["millis"].ValueSpan, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) / MillisPerC);
    }

    // A wire that is shorted to ground sends zeros, whose check sum is zero too: 0 °C, as it seems.
    private double Believed(string[] bytes, double measuredC) =>
        bytes.All(each => each == "00") ? throw new IOException("its data line is shorted to ground")
        : measuredC == WeakC ? throw new IOException("its power does not last for a measurement: feed it by a wire of its own")
        : measuredC == PowerUpC && (bytes[TellingByte] == PowerUpByte || !(Math.Abs(measuredC - lastC) <= MostStepK))
            ? throw new IOException("it has been without power and has measured nothing since")
        : measuredC;

    private string Text()
    {
        var folder = Path.Combine(devices, code);
        try
        {
            return File.ReadAllText(Path.Combine(folder, "w1_slave"));
        }
        catch (DirectoryNotFoundException missing)
        {
            throw new IOException($"no 1-wire bus lists {code}", missing);
        }
        catch (FileNotFoundException missing)
        {
            throw new IOException($"no driver reads {code}, so load w1-therm", missing);
        }
    }

    // 7f 01 4b 46 7f ff 01 10 33 : crc=33 YES
    // 7f 01 4b 46 7f ff 01 10 33 t=23937
    [GeneratedRegex(@"^(?<bytes>(?:[0-9a-f]{2} ?){9}) : crc=[0-9a-f]{2} (?<verdict>YES|NO)\n[0-9a-f ]*t=(?<millis>-?[0-9]{1,6})\n")]
    private static partial Regex Answer();
}
