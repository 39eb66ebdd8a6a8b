using RackController.Model;

namespace RackController.Bench;

/// <summary>The most that a circuit carried in a run.</summary>
internal sealed class CircuitRecorder(Circuit circuit)
{
    private double peakA;

    public void Look(IObserved now) => peakA = Math.Max(peakA, now.CircuitA(circuit.Id));

    public CircuitTotals Record(double energyKWh) => new(circuit.Id, energyKWh, peakA);
}
