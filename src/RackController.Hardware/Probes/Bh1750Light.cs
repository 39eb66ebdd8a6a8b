using System.Device.I2c;
using Iot.Device.Bh1750fvi;

namespace RackController.Hardware.Probes;

/// <summary>A BH1750, measuring without a pause, to 1 lx. It reads at most 54 612 lx, whatever shines beyond that.</summary>
internal sealed class Bh1750Light : IDisposable
{
    // The longest that a measurement takes is 180 ms (data sheet, from memory).
    private static readonly TimeSpan measured = TimeSpan.FromMilliseconds(200);
    private readonly Bh1750fvi part;

    /// <summary>Has it begin to measure, and waits until it has something to say: before, it says 0, which is a lux like any other. The
    /// library's class does not wait.</summary>
    /// <param name="device">The part on its bus.</param>
    /// <param name="wait">Waits.</param>
    /// <exception cref="IOException">It does not answer.</exception>
    public Bh1750Light(I2cDevice device, Action<TimeSpan> wait)
    {
        part = new Bh1750fvi(device, MeasuringMode.ContinuouslyHighResolutionMode);
        Lux();
        wait(measured);
    }

    /// <summary>Illuminance, lx: of the measurement that was last finished, a fraction of a second ago.</summary>
    public double Lux() => part.Illuminance.Lux;

    /// <inheritdoc/>
    public void Dispose() => part.Dispose();
}
