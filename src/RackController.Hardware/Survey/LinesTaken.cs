using RackController.Model;

namespace RackController.Hardware;

/// <summary>Who uses which line, so that a name and an offset of one line are found out, and a label and a number of one chip.</summary>
public sealed class LinesTaken
{
    private readonly Dictionary<(string Path, int Offset), string> uses = [];

    /// <summary>Puts a line down.</summary>
    /// <param name="use">What it is used for.</param>
    /// <param name="chip">Its chip.</param>
    /// <param name="line">The line, found.</param>
    /// <exception cref="GpioUnavailableException">Something else uses it.</exception>
    public void Take(string use, ChipSight chip, GpioLine line)
    {
        ArgumentNullException.ThrowIfNull(chip);
        ArgumentNullException.ThrowIfNull(line);
        if (!uses.TryAdd((chip.Path, line.Offset), use))
        {
            throw new GpioUnavailableException($"{use} and {uses[(chip.Path, line.Offset)]} are both on line {line.Offset} of "
                + $"chip '{chip.Label}'. Give each a line of its own in the rack file.");
        }
    }
}
