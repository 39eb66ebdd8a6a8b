using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// One branch circuit: supply, breaker, ground-fault protection, and the currents of its loads added up as if in phase, which is
/// never less than what flows. Every simulated circuit has ground-fault protection, as the product's cautions ask.
/// </summary>
internal sealed class CircuitElectrics
{
    private readonly double ratedA;
    private readonly OvercurrentProtection overcurrent;
    private readonly GroundFaultProtection groundFault;
    private readonly List<LoadElectrics> loads = [];
    private EnergyMeter meter;
    private bool isDisturbed = true;

    public CircuitElectrics(Circuit circuit, BreakerEdge edge)
    {
        ratedA = circuit.BreakerA;
        Contactor = new Contactor(this);
        overcurrent = new OvercurrentProtection(BreakerCurve.Of(circuit.VoltageV, circuit.BreakerA, edge));
        groundFault = new GroundFaultProtection(GroundFaultCurve.Of(circuit.VoltageV, edge));
    }

    /// <summary>Whether the breaker is closed, and if not, what opened it.</summary>
    public BreakerState Breaker { get; private set; }

    /// <summary>Share of its voltage that the supply ahead of the breaker has: 0 in an outage.</summary>
    public double MainsShare
    {
        get;
        set
        {
            isDisturbed |= field != value;
            field = value;
        }
    } = 1;

    /// <summary>The contactor between breaker and relays; one that is never told to cut where there is none.</summary>
    public Contactor Contactor { get; }

    /// <summary>Share of its voltage that there is behind the breaker, where the supply is sensed.</summary>
    public double BehindBreakerShare => Breaker == BreakerState.Closed ? MainsShare : 0;

    /// <summary>Share of its voltage that loads get.</summary>
    public double SupplyShare => Contactor.IsOpen ? 0 : BehindBreakerShare;

    /// <summary>Current now, A.</summary>
    public double CurrentA { get; private set; }

    /// <summary>When currents change by themselves: an inrush that ends, or a protection that opens.</summary>
    public MonotonicTime NextChange { get; private set; }

    /// <summary>Energy drawn since the start, J.</summary>
    /// <param name="now">The time now.</param>
    public double EnergyJ(MonotonicTime now) => meter.EnergyJ(now);

    /// <summary>Takes a load that hangs on it.</summary>
    public void Add(LoadElectrics load) => loads.Add(load);

    /// <summary>Something about it is not as it was when it last settled.</summary>
    public void Disturb() => isDisturbed = true;

    /// <summary>Opens the breaker.</summary>
    public void Trip(BreakerState cause)
    {
        Breaker = cause;
        isDisturbed = true;
    }

    /// <summary>Somebody closes the breaker, if it is open.</summary>
    public void Close()
    {
        if (Breaker != BreakerState.Closed)
        {
            Breaker = BreakerState.Closed;
            overcurrent.Cool();
            isDisturbed = true;
        }
    }

    /// <summary>Gives power where relay and supply allow it, and lets a protection open whose time has come, until nothing changes
    /// any more.</summary>
    /// <param name="now">The time now.</param>
    public void Settle(MonotonicTime now)
    {
        if (!isDisturbed && now < NextChange)
        {
            return;
        }

        do
        {
            Draw(now);
        }
        while (TripIfDue(now));

        isDisturbed = false;
        NextChange = MonotonicTime.Earlier(overcurrent.TripsAt, groundFault.TripsAt);
        foreach (var load in loads)
        {
            NextChange = MonotonicTime.Earlier(NextChange, load.NextChange);
        }
    }

    private void Draw(MonotonicTime now)
    {
        var (currentA, powerW, leakMilliA) = (0.0, 0.0, 0.0);
        foreach (var load in loads)
        {
            load.Settle(SupplyShare, now);
            currentA += load.CurrentA;
            powerW += load.PowerW;
            leakMilliA += load.LeakMilliA;
        }

        CurrentA = currentA;
        overcurrent.Carry(currentA / ratedA, now);
        groundFault.Carry(leakMilliA, now);
        meter.Draw(powerW, now);
    }

    private bool TripIfDue(MonotonicTime now)
    {
        if (Breaker != BreakerState.Closed)
        {
            return false;
        }

        if (overcurrent.TripsAt <= now)
        {
            Breaker = overcurrent.IsMagnetic ? BreakerState.TrippedByShortCircuit : BreakerState.TrippedByOverload;
        }
        else if (groundFault.TripsAt <= now)
        {
            Breaker = BreakerState.TrippedByGroundFault;
        }

        return Breaker != BreakerState.Closed;
    }
}
