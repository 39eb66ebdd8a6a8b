using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// One load behind its relay. Current I = P / (U cos phi), and for a moment after switching on, a multiple of it: 10 ms for the
/// drivers of lights (inrush "under 10 ms", studylib.net/doc/25647287), 500 ms for motors (4 to 8 times for less than 1 s, common
/// practice, no source), 50 ms for the coils of valves (an assumption of ours).
/// </summary>
internal sealed class LoadElectrics
{
    private readonly double runningA;
    private readonly Duration inrushLasts;

    public LoadElectrics(Load load, Circuit circuit)
    {
        Load = load;
        runningA = load.CurrentA(circuit.VoltageV);
        inrushLasts = Duration.FromMilliseconds(load.Kind switch
        {
            LoadKind.Light => 10,
            LoadKind.Valve => 50,
            _ => 500,
        });
        Commanded = load.SafeState == SwitchState.On;
        RelayOn = Commanded;
    }

    /// <summary>The load.</summary>
    public Load Load { get; }

    /// <summary>What it was last told.</summary>
    public bool Commanded { get; set; }

    /// <summary>Whether its relay's contact is closed, which a fault may keep from what was told.</summary>
    public bool RelayOn { get; set; }

    /// <summary>Whether it draws power.</summary>
    public bool Powered { get; private set; }

    /// <summary>Whether its motor is held fast, so that it draws its starting current for as long as it is on.</summary>
    public bool HeldFast { get; set; }

    /// <summary>When its starting current ends; <see cref="MonotonicTime.Never"/> while there is none.</summary>
    public MonotonicTime InrushEnds { get; private set; } = MonotonicTime.Never;

    /// <summary>Current now, A.</summary>
    public double CurrentA => !Powered ? 0
        : HeldFast || InrushEnds != MonotonicTime.Never ? runningA * Load.InrushMultiple
        : runningA;

    /// <summary>Real power now, W; starting currents are too short to count.</summary>
    public double PowerW => Powered ? Load.PowerW : 0;

    /// <summary>Energy drawn since the start, J.</summary>
    public double EnergyJ { get; set; }

    /// <summary>Gives or takes power.</summary>
    public void SetPowered(bool powered, MonotonicTime now)
    {
        if (powered && !Powered && Load.InrushMultiple > 1)
        {
            InrushEnds = now + inrushLasts;
        }

        Powered = powered;
        EndInrush(now);
    }

    private void EndInrush(MonotonicTime now)
    {
        if (!Powered || InrushEnds <= now)
        {
            InrushEnds = MonotonicTime.Never;
        }
    }
}
