using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// One load behind its relay. Current I = P / (U cos phi), and for a moment after starting a multiple of it: 10 ms for the
/// drivers of lights (inrush "under 10 ms", studylib.net/doc/25647287), 500 ms for motors (4 to 8 times for less than 1 s, common
/// practice, no source), 50 ms for the coils of valves (an assumption of ours).
/// <para>With less than its voltage a driver still draws its power, so its current rises until it gives out; a motor turns slower
/// and draws more current, see <see cref="MotorSpeed"/>; a motor that cannot turn, and a coil that cannot pull, are an impedance
/// that draws the starting current for as long as it is on, for nothing cuts it out but the breaker.</para>
/// </summary>
internal sealed class LoadElectrics
{
    // Beyond the streams of all sensors.
    private const int RelayStream = 1 << 20;

    private readonly CircuitElectrics circuit;
    private readonly RelayAction relay;
    private readonly double runningA;
    private readonly Duration inrushLasts;
    private readonly VoltageNeed need;
    private EnergyMeter meter;

    public LoadElectrics(Load load, double circuitV, CircuitElectrics circuit, ulong seed, TimeCutout? timeCutout)
    {
        Load = load;
        TimeRelay = timeCutout is { After: var after } ? new TimeCutoutRelay(after, Faults) : null;
        relay = new RelayAction(RelayStream + load.Id.Index, seed, Faults);
        this.circuit = circuit;
        runningA = load.CurrentA(circuitV);
        need = VoltageNeed.Of(load.Kind, circuitV);
        inrushLasts = Duration.FromMilliseconds(load.Kind switch
        {
            LoadKind.Light => 10,
            LoadKind.Valve => 50,
            _ => 500,
        });
        Commanded = load.SafeState == SwitchState.On;
    }

    /// <summary>The load.</summary>
    public Load Load { get; }

    /// <summary>What it was last told.</summary>
    public bool Commanded
    {
        get;
        set
        {
            if (field != value)
            {
                field = value;
                circuit.Disturb();
            }
        }
    }

    /// <summary>Whether something other than its relay has opened its wire.</summary>
    public bool IsWireOpen
    {
        get;
        set
        {
            if (field != value)
            {
                field = value;
                circuit.Disturb();
            }
        }
    }

    /// <summary>The time relay in its wire; null where none is.</summary>
    public TimeCutoutRelay? TimeRelay { get; }

    /// <summary>What faults do to it; whoever changes that disturbs its circuit.</summary>
    public LoadFaults Faults { get; } = new();

    /// <summary>Whether its relay's contact is closed.</summary>
    public bool RelayOn { get; private set; }

    /// <summary>Whether it draws power.</summary>
    public bool Powered => PowerW > 0;

    /// <summary>Whether it does what it is for: lights, turns, or holds its valve open.</summary>
    public bool Works { get; private set; }

    /// <summary>Share of its full speed at which it turns; 1 for what has no motor, 0 for what does not work.</summary>
    public double SpeedShare { get; private set; }

    /// <summary>When its starting current ends; <see cref="MonotonicTime.Never"/> while there is none.</summary>
    public MonotonicTime InrushEnds { get; private set; } = MonotonicTime.Never;

    /// <summary>When its current changes by itself: a starting current ends, a faulty relay moves, or a time relay opens.</summary>
    public MonotonicTime NextChange => MonotonicTime.Earlier(
        MonotonicTime.Earlier(InrushEnds, relay.Due), TimeRelay?.Due ?? MonotonicTime.Never);

    /// <summary>Current now, A.</summary>
    public double CurrentA { get; private set; }

    /// <summary>Real power now, W; starting currents are too short to count, those of what cannot start are not.</summary>
    public double PowerW { get; private set; }

    /// <summary>What leaks from it to earth now, mA.</summary>
    public double LeakMilliA { get; private set; }

    /// <summary>Energy drawn since the start, J.</summary>
    /// <param name="now">The time now.</param>
    public double EnergyJ(MonotonicTime now) => meter.EnergyJ(now);

    /// <summary>Takes the voltage that is there, and lets its starting current begin or end.</summary>
    /// <param name="supplyShare">Share of its circuit's voltage; 0 when there is none.</param>
    /// <param name="now">The time now.</param>
    public void Settle(double supplyShare, MonotonicTime now)
    {
        var moved = relay.IsClosed(Commanded, now);
        RelayOn = Faults.ContactHeld ?? moved;
        TimeRelay?.Feel(RelayOn && supplyShare > 0, now);
        var share = RelayOn && !IsWireOpen && TimeRelay is not { IsOpen: true } && !Faults.IsDead ? supplyShare : 0;
        var works = !Faults.HeldFast && share >= (Works ? need.HoldsFromShare : need.StartsFromShare);
        if (works && !Works && Load.InrushMultiple > 1)
        {
            InrushEnds = now + inrushLasts;
        }
        else if (!works || InrushEnds <= now)
        {
            InrushEnds = MonotonicTime.Never;
        }

        Works = works;
        SpeedShare = !works ? 0 : IsMotor ? MotorSpeed.Share(share) : 1;
        var settled = SettledMultiple(share);
        CurrentA = runningA * (InrushEnds == MonotonicTime.Never ? settled : Load.InrushMultiple * share);
        PowerW = Load.PowerW * settled * share;
        LeakMilliA = Faults.LeakMilliA * share;
        meter.Draw(PowerW, now);
    }

    private bool IsMotor => Load.Kind is LoadKind.Pump or LoadKind.Fan or LoadKind.Aerator;

    // Its current once started, as a multiple of the running current at full voltage.
    private double SettledMultiple(double share) => Load.Kind == LoadKind.Light
        ? Works ? 1 / share : 0
        : !Works ? Load.InrushMultiple * share
        : IsMotor ? SpeedShare * SpeedShare / share
        : share;
}
