using RackController.Model;

namespace RackController.Hardware;

/// <summary>One relay on its output line: which level gives its load which state.</summary>
internal sealed class RelayOutput(Load load, RelayLine plan)
    : OutputLine(load.Name, plan.Line, plan.ActiveLow, IsEnergised(load, load.SafeState))
{
    /// <inheritdoc/>
    protected override string Wiring =>
        $"load through the {(load.Contact == RelayContact.NormallyOpen ? "normally-open" : "normally-closed")} contact";

    /// <inheritdoc/>
    protected override bool IsEnergisedBy(RelayCommands commands) => IsEnergised(load, commands[load.Id]);

    // Through a normally-closed contact a load is on while the coil rests.
    private static bool IsEnergised(Load load, SwitchState state) =>
        (state == SwitchState.On) == (load.Contact == RelayContact.NormallyOpen);
}
