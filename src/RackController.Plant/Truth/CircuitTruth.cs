namespace RackController.Plant;

/// <summary>What is really so on one simulated circuit: a live, read-only view.</summary>
public sealed class CircuitTruth
{
    private const double JoulesPerKWh = 3.6e6;
    private readonly CircuitElectrics circuit;
    private readonly SiteElectrics electrics;

    internal CircuitTruth(CircuitElectrics circuit, SiteElectrics electrics)
    {
        this.circuit = circuit;
        this.electrics = electrics;
    }

    /// <summary>Current now, A, starting currents included.</summary>
    public double CurrentA => circuit.CurrentA;

    /// <summary>Whether its contactor is open, and so nothing on it has power.</summary>
    public bool IsCut => circuit.Contactor.IsOpen;

    /// <summary>Whether loads can draw power: supply there, however low, breaker and contactor closed.</summary>
    public bool SupplyPresent => circuit.SupplyShare > 0;

    /// <summary>Whether the breaker is closed, and if not, what opened it.</summary>
    public BreakerState Breaker => circuit.Breaker;

    /// <summary>Energy drawn since the start, kWh.</summary>
    public double EnergyKWh => circuit.EnergyJ(electrics.Now) / JoulesPerKWh;
}
