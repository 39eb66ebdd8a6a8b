using System.Device.Gpio;
using NodaTime;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>
/// A line that changes its level while scans are good, and rests low otherwise. A wired watchdog relay that is fed by the changes and by
/// no level lets go when a program hangs, a board stops, or a wire breaks. Failing to change it is therefore no fault of a scan: it is
/// what the relay is there for.
/// </summary>
internal sealed class Heartbeat : IDisposable
{
    // Some changes a second are more than enough for a relay that lets go after some seconds, and a scan may be a little late.
    private static readonly Duration every = Duration.FromMilliseconds(500);
    private readonly GpioLine line;
    private readonly Func<string, GpioDriver> openChip;
    private GpioController? chip;
    private MonotonicTime due;
    private bool isHigh;

    /// <summary>Takes its line, low.</summary>
    /// <param name="line">The line.</param>
    /// <param name="openChip">Gives the driver of its chip.</param>
    /// <exception cref="IOException">The line cannot be had.</exception>
    public Heartbeat(GpioLine line, Func<string, GpioDriver> openChip)
    {
        this.line = line;
        this.openChip = openChip;
        Claim();
    }

    /// <summary>A scan was good.</summary>
    /// <param name="now">Its time.</param>
    public void Beat(MonotonicTime now)
    {
        if (now < due)
        {
            return;
        }

        due = now + every;
        isHigh = !isHigh;
        Write(isHigh ? PinValue.High : PinValue.Low);
    }

    /// <summary>One line about it, for the log.</summary>
    public string Describe() => $"heartbeat: {line}, changes while scans are good, rests low";

    /// <inheritdoc/>
    public void Dispose()
    {
        if (chip is not null)
        {
            Write(PinValue.Low);
        }

        chip?.Dispose();
    }

    private void Write(PinValue level)
    {
        try
        {
            (chip ?? Claim()).Write(line.Offset, level);
        }
        catch (IOException)
        {
            // The chip may be another when it is back.
            chip?.Dispose();
            chip = null;
        }
    }

    private GpioController Claim()
    {
        var opened = new GpioController(openChip(line.Chip));
        try
        {
            opened.OpenPin(line.Offset, PinMode.Output, PinValue.Low);
        }
        catch
        {
            opened.Dispose();
            throw;
        }

        return chip = opened;
    }
}
