using System.Device.I2c;
using Iot.Device.Ads1115;

namespace RackController.Hardware.Probes;

/// <summary>An ADS1115, converting without a pause and as fast as it can: 860 times a second.</summary>
internal sealed class Converter(I2cDevice device) : IDisposable
{
    private readonly Ads1115 part = new(
        device, InputMultiplexer.AIN0, MeasuringRange.FS4096, DataRate.SPS860, DeviceMode.Continuous);

    /// <summary>Turns it to an input.</summary>
    /// <param name="input">0 to 3.</param>
    public void TurnTo(int input) => part.InputMultiplexer = InputMultiplexer.AIN0 + input;

    /// <summary>The last conversion, V.</summary>
    public double VoltageV() => part.RawToVoltage(part.ReadRaw()).Volts;

    /// <inheritdoc/>
    public void Dispose()
    {
        part.Dispose();
        device.Dispose();
    }
}
