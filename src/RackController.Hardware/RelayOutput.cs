using System.Device.Gpio;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>One relay on its output line: which level gives its load which state.</summary>
internal sealed class RelayOutput
{
    private readonly RelayLine plan;
    private readonly RelayContact contact;
    private readonly PinValue safeLevel;
    private readonly string levelFault;
    private PinValue? confirmed;

    internal RelayOutput(Load load, RelayLine plan)
    {
        Name = load.Name;
        this.plan = plan;
        contact = load.Contact;
        safeLevel = LevelFor(load.SafeState);
        levelFault = $"{Name}: line {plan.Line.Offset} of chip '{plan.Line.ChipLabel}' does not follow what is written to it. "
            + "Look for a short circuit or a second driver.";
    }

    /// <summary>The load's name.</summary>
    internal string Name { get; }

    /// <summary>The level that gives the load a state. Through a normally-closed contact a load is on while the coil rests;
    /// an active-low coil rests on a high level.</summary>
    internal PinValue LevelFor(SwitchState state)
    {
        var energised = (state == SwitchState.On) == (contact == RelayContact.NormallyOpen);
        return energised == plan.ActiveLow ? PinValue.Low : PinValue.High;
    }

    /// <summary>Takes the line with the load in its safe state from the first instant.</summary>
    /// <exception cref="IOException">The line cannot be had.</exception>
    internal void Claim(GpioController controller)
    {
        confirmed = null;
        controller.OpenPin(plan.Line.Offset, PinMode.Output, safeLevel);
    }

    /// <summary>Gives the load what it is told, and reads back whether the line followed.</summary>
    /// <returns>What is wrong; null when the line follows.</returns>
    /// <exception cref="IOException">The line cannot be written or read.</exception>
    internal string? Write(GpioController controller, RelayCommands commands)
    {
        var wanted = LevelFor(commands[plan.Load]);
        if (confirmed != wanted)
        {
            // Unconfirmed until the read-back, so that whatever fails in between is written again by the next scan.
            confirmed = null;
            controller.Write(plan.Line.Offset, wanted);
        }

        var follows = controller.Read(plan.Line.Offset) == wanted;
        confirmed = follows ? wanted : null;
        return follows ? null : levelFault;
    }

    /// <summary>How the relay is wired, for the log.</summary>
    internal string Describe() =>
        $"{Name}: relay on line {plan.Line.Offset} of chip '{plan.Line.ChipLabel}', coil on a {(plan.ActiveLow ? "low" : "high")} level, "
        + $"load through the {(contact == RelayContact.NormallyOpen ? "normally-open" : "normally-closed")} contact, "
        + $"safe level {(safeLevel == PinValue.High ? "high" : "low")}";
}
