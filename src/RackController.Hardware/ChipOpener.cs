using System.Device.Gpio;
using System.Device.I2c;
using System.Diagnostics;
using RackController.Hardware.CharacterDevice;
using RackController.Hardware.Expanders;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>Gives the driver of each chip that the lines of a site are on: a chip of the board, or a part on a bus that is spoken to from
/// here until the end.</summary>
internal sealed class ChipOpener : IDisposable
{
    /// <summary>Under what name lines are held.</summary>
    internal const string Consumer = "rackcontroller";

    private readonly Dictionary<string, string> labels = [];
    private readonly Dictionary<string, (ExpanderLines Lines, int Count)> expanders;

    /// <summary>Speaks to nobody yet.</summary>
    /// <param name="parts">The parts on buses, by their name in place of a chip's label.</param>
    /// <param name="openPart">Opens a part on its bus; may throw <see cref="IOException"/>, and is asked again then.</param>
    /// <param name="clock">The clock that the scan lives by, for any thread.</param>
    public ChipOpener(IEnumerable<BusPart> parts, Func<BusPart, I2cDevice> openPart, Func<MonotonicTime> clock) =>
        expanders = parts.ToDictionary(part => part.Name, part => (
            new ExpanderLines(part.Name, () => ExpanderPort.Of(part.Kind, openPart(part)), clock), part.Kind.RelayLines()));

    /// <summary>The driver of a chip.</summary>
    /// <param name="label">The label or device file of a chip of the board, or the name of a part.</param>
    /// <exception cref="IOException">The board has no such chip.</exception>
    public GpioDriver Open(string label) => expanders.TryGetValue(label, out var expander)
        ? new ExpanderDriver(expander.Lines, expander.Count)
        : OpenOfBoard(label);

    /// <summary>Waits until every part was seen to do what it was told: in all no longer than one may take.</summary>
    /// <returns>What was not seen, and why; null when everything was.</returns>
    public string? Settle()
    {
        var since = Stopwatch.GetTimestamp();
        var faults = expanders.Values
            .Select(expander => expander.Lines.Settle(ExpanderLines.Patience.ToTimeSpan() - Stopwatch.GetElapsedTime(since)))
            .OfType<string>().ToArray();
        return faults.Length == 0 ? null : string.Join("; ", faults);
    }

    // A chip that was lost and is back may have another number, and another chip may have come to that one.
    private CharacterDeviceDriver OpenOfBoard(string name)
    {
        var driver = new CharacterDeviceDriver(name, Consumer);
        if (labels.TryAdd(name, driver.ChipLabel) || labels[name] == driver.ChipLabel)
        {
            return driver;
        }

        driver.Dispose();
        throw new GpioUnavailableException($"{name} was the chip '{labels[name]}', and is '{driver.ChipLabel}' now: chips have changed "
            + "their numbers. Write the chip's label in the rack file, and start the controller again.");
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var (lines, _) in expanders.Values)
        {
            lines.Dispose();
        }
    }
}
