using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// One branch circuit: supply, breaker, and the currents of its loads added up as if in phase, which is never less than what
/// flows.
/// </summary>
internal sealed class CircuitElectrics
{
    /// <summary>A trip due within so little time is due: rounding of the time reached must not leave one an instant away for
    /// ever. Whoever lets time pass settles within it too.</summary>
    public static readonly Duration DueWithin = Duration.FromNanoseconds(1000);

    private readonly Circuit circuit;
    private readonly BreakerCurve curve;
    private double heat;

    public CircuitElectrics(Circuit circuit, BreakerEdge edge)
    {
        this.circuit = circuit;
        curve = BreakerCurve.Of(circuit.VoltageV, edge);
    }

    /// <summary>Whether the breaker is closed, and if not, what opened it.</summary>
    public BreakerState Breaker { get; private set; }

    /// <summary>Whether the supply ahead of the breaker is there.</summary>
    public bool MainsPresent { get; set; } = true;

    /// <summary>Whether loads can draw power.</summary>
    public bool SupplyPresent => MainsPresent && Breaker == BreakerState.Closed;

    /// <summary>Current now, A.</summary>
    public double CurrentA { get; set; }

    /// <summary>Energy drawn since the start, J.</summary>
    public double EnergyJ { get; set; }

    /// <summary>How long until the breaker trips if nothing changes, s.</summary>
    public double SecondsToTrip =>
        SupplyPresent ? curve.SecondsToTrip(heat, CurrentA / circuit.BreakerA) : double.PositiveInfinity;

    /// <summary>Warms or cools the breaker.</summary>
    /// <param name="seconds">How long the current now has flowed.</param>
    public void Advance(double seconds) =>
        heat = curve.HeatAfter(heat, CurrentA / circuit.BreakerA, seconds);

    /// <summary>Opens the breaker if its time has come.</summary>
    /// <returns>Whether it opened.</returns>
    public bool TripIfDue()
    {
        if (!SupplyPresent || SecondsToTrip > DueWithin.TotalSeconds)
        {
            return false;
        }

        Trip(CurrentA / circuit.BreakerA >= curve.MagneticMultiple
            ? BreakerState.TrippedByShortCircuit
            : BreakerState.TrippedByOverload);
        return true;
    }

    /// <summary>Opens the breaker.</summary>
    public void Trip(BreakerState cause) => Breaker = cause;

    /// <summary>Somebody closes the breaker; its thermal part has cooled, or it would not latch.</summary>
    public void Close()
    {
        Breaker = BreakerState.Closed;
        heat = 0;
    }
}
