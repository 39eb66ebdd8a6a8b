using RackController.Model;

namespace RackController.Control;

/// <summary>Tells that a circuit cannot carry what is wanted, so that loads of low priority wait. Admission does the
/// shedding; the schedule or the circuit needs a person.</summary>
internal sealed class CircuitShed(CauseAndEffectRow row, Circuit circuit) : Interlock(row, Place.Of(circuit), [])
{
    public override string Settings => $"{circuit.ContinuousLimitA:0.##} A";

    protected override bool IsPresent(Facts facts, Agenda agenda) => facts.IsShedding(circuit.Id);

    public override string Words(ClockFace clock) =>
        $"what is wanted at once is more than the {circuit.ContinuousLimitA:0.##} A that {circuit.Name} may carry";
}
