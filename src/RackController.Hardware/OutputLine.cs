using System.Device.Gpio;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>A coil on its output line: held at a level from the first instant, and read back after every write.</summary>
internal abstract class OutputLine
{
    private readonly GpioLine line;
    private readonly bool isActiveLow;
    private readonly PinValue safeLevel;
    private readonly string levelFault;
    private PinValue? confirmed;
    private PinValue? told;
    private bool isWritten;

    /// <summary>Describes a line.</summary>
    /// <param name="name">What its coil switches.</param>
    /// <param name="line">Where it is.</param>
    /// <param name="isActiveLow">Whether a low level energises the coil.</param>
    /// <param name="isSafeEnergised">Whether the coil is energised in the safe state.</param>
    protected OutputLine(string name, GpioLine line, bool isActiveLow, bool isSafeEnergised)
    {
        Name = name;
        this.line = line;
        this.isActiveLow = isActiveLow;
        safeLevel = LevelWhere(isSafeEnergised);
        levelFault = $"{Name}: {line} does not follow what is written to it. "
            + "Look for a short circuit or a second driver.";
    }

    /// <summary>What its coil switches.</summary>
    internal string Name { get; }

    /// <summary>Whether commands ask for an energised coil.</summary>
    protected abstract bool IsEnergisedBy(RelayCommands commands);

    /// <summary>Whether a line that is claimed again is given at once what its coil was last told, and not its safe level.</summary>
    protected virtual bool StaysAsTold => false;

    /// <summary>What the coil switches, and how, for the log.</summary>
    protected abstract string Wiring { get; }

    /// <summary>The level that commands ask for; an active-low coil rests on a high one.</summary>
    internal PinValue LevelBy(RelayCommands commands) => LevelWhere(IsEnergisedBy(commands));

    private PinValue LevelWhere(bool isEnergised) => isEnergised == isActiveLow ? PinValue.Low : PinValue.High;

    /// <summary>Takes the line from the first instant at its safe level, or at what it was told before where it stays so.</summary>
    /// <exception cref="IOException">The line cannot be had.</exception>
    internal void Claim(GpioController controller)
    {
        confirmed = null;
        controller.OpenPin(line.Offset, PinMode.Output, StaysAsTold ? told ?? safeLevel : safeLevel);
    }

    /// <summary>Gives the coil what it is told, unless its line was seen to follow that already.</summary>
    /// <exception cref="IOException">The line cannot be written.</exception>
    internal void Write(GpioController controller, RelayCommands commands)
    {
        var wanted = LevelBy(commands);
        told = wanted;
        isWritten = false;
        if (confirmed != wanted)
        {
            // Unconfirmed until the read-back, so that whatever fails in between is written again by the next scan.
            confirmed = null;
            controller.Write(line.Offset, wanted);
        }

        isWritten = true;
    }

    /// <summary>Reads back whether the line followed what was written last; asks nothing of one that could not be written.
    /// It is the board's own pin that is read: it follows whatever a relay board behind it does, and with its wire off, too.</summary>
    /// <returns>What is wrong; null when the line follows.</returns>
    /// <exception cref="IOException">The line cannot be read.</exception>
    internal string? ReadBack(GpioController controller)
    {
        if (!isWritten)
        {
            return null;
        }

        var follows = controller.Read(line.Offset) == told;
        confirmed = follows ? told : null;
        return follows ? null : levelFault;
    }

    /// <summary>How it is wired, for the log.</summary>
    internal string Describe() =>
        $"{Name}: relay on {line}, coil on a {(isActiveLow ? "low" : "high")} level, "
        + $"{Wiring}, safe level {(safeLevel == PinValue.High ? "high" : "low")}";
}
