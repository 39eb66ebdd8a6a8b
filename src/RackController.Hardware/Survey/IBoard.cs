using RackController.Model;

namespace RackController.Hardware;

/// <summary>A board that is looked at without driving anything.</summary>
public interface IBoard
{
    /// <summary>A chip, by its label or device file.</summary>
    /// <exception cref="IOException">It cannot be had; the message says why, and what to do.</exception>
    ChipSight Chip(string name);

    /// <summary>Who holds a line that was found; null while nobody does.</summary>
    /// <exception cref="IOException">The chip does not have it.</exception>
    string? HolderOf(GpioLine line);

    /// <summary>Asks a sensor once, which takes up to a second.</summary>
    /// <param name="site">Its site.</param>
    /// <param name="probe">How it is read.</param>
    /// <returns>What it measures, in the unit of its kind.</returns>
    /// <exception cref="IOException">It did not answer.</exception>
    double Ask(Site site, Probe probe);

    /// <summary>Reads the lines of a part, and drives none.</summary>
    /// <exception cref="IOException">It did not answer.</exception>
    void AskExpander(BusPart part);
}
