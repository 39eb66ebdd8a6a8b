namespace RackController.Plant;

/// <summary>What is really so on one simulated circuit: a live, read-only view.</summary>
public sealed class CircuitTruth
{
    private const double JoulesPerKWh = 3.6e6;
    private readonly CircuitElectrics circuit;

    internal CircuitTruth(CircuitElectrics circuit) => this.circuit = circuit;

    /// <summary>Current now, A, starting currents included.</summary>
    public double CurrentA => circuit.CurrentA;

    /// <summary>Whether loads can draw power: supply there and breaker closed.</summary>
    public bool SupplyPresent => circuit.SupplyPresent;

    /// <summary>Whether the breaker is closed, and if not, what opened it.</summary>
    public BreakerState Breaker => circuit.Breaker;

    /// <summary>Energy drawn since the start, kWh.</summary>
    public double EnergyKWh => circuit.EnergyJ / JoulesPerKWh;
}
