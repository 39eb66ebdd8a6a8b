using System.Device.I2c;
using Iot.Device.Bmxx80;
using Iot.Device.Sht3x;

namespace RackController.Hardware.Probes;

/// <summary>A part that measures the air.</summary>
internal interface IAirPart : IDisposable
{
    /// <summary>Temperature now, °C.</summary>
    double TemperatureC();

    /// <summary>Relative humidity now, %.</summary>
    double HumidityPercent();
}

/// <summary>An SHT30, SHT31 or SHT35.</summary>
internal sealed class Sht3xAir(I2cDevice device) : IAirPart
{
    private readonly Sht3x part = new(new Sht3xFrames(device));

    /// <inheritdoc/>
    public double TemperatureC() => part.Temperature.DegreesCelsius;

    /// <inheritdoc/>
    public double HumidityPercent() => part.Humidity.Percent;

    /// <inheritdoc/>
    public void Dispose() => part.Dispose();
}

/// <summary>A BME280, which measures when it is asked.</summary>
internal sealed class Bme280Air : IAirPart
{
    private readonly Bme280 part;

    public Bme280Air(I2cDevice device) => part = new Bme280(device)
    {
        TemperatureSampling = Sampling.Standard,
        HumiditySampling = Sampling.Standard,
        PressureSampling = Sampling.Skipped,
    };

    /// <inheritdoc/>
    public double TemperatureC() => part.Read().Temperature?.DegreesCelsius ?? throw new IOException("it measured no temperature");

    /// <inheritdoc/>
    public double HumidityPercent() => part.Read().Humidity?.Percent ?? throw new IOException("it measured no humidity");

    /// <inheritdoc/>
    public void Dispose() => part.Dispose();
}
