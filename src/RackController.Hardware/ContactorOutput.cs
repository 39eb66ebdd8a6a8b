using RackController.Model;

namespace RackController.Hardware;

/// <summary>The contactor of a circuit on its output line. Its safe state is at rest, which leaves the circuit closed. While it is told to
/// cut the circuit, a line that has to be claimed again does not close it in between. Hazard: the pump behind it, whose relay is welded,
/// starts each time.</summary>
internal sealed class ContactorOutput(Circuit circuit, ContactorLine plan)
    : OutputLine(circuit.ContactorName, plan.Line, plan.ActiveLow, isSafeEnergised: false)
{
    /// <inheritdoc/>
    protected override string Wiring => "circuit closed while the coil rests";

    /// <inheritdoc/>
    protected override bool StaysAsTold => true;

    /// <inheritdoc/>
    protected override bool IsEnergisedBy(RelayCommands commands) => commands.IsCut(circuit.Id);
}
