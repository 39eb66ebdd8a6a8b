namespace RackController.Plant;

/// <summary>What acts on the water of one rack from outside: relays, faults and weather. Constant between two changes.</summary>
internal sealed class WaterInputs
{
    public WaterInputs(int tiers)
    {
        ValveOpen = new bool[tiers];
        WeepBlocked = new bool[tiers];
        LeakM3PerS = new double[tiers];
        ThirstM3PerS = new double[tiers];
    }

    /// <summary>Share of its full speed at which the pump turns, worn or short of voltage as it may be; 0 while it stands.</summary>
    public double PumpSpeed { get; set; }

    /// <summary>Whether the pump turns.</summary>
    public bool PumpTurns => PumpSpeed > 0;

    /// <summary>Minor loss coefficient of the clogged screen; 0 when clean.</summary>
    public double ScreenLossK { get; set; }

    /// <summary>Whether each tier's branch lets water pass.</summary>
    public bool[] ValveOpen { get; }

    /// <summary>Whether each weep is blocked.</summary>
    public bool[] WeepBlocked { get; }

    /// <summary>What each tray leaks to the floor while it holds water.</summary>
    public double[] LeakM3PerS { get; }

    /// <summary>What each tier's crop would give off if it had water enough.</summary>
    public double[] ThirstM3PerS { get; }

    /// <summary>What leaves the reservoir as vapour.</summary>
    public double EvaporationM3PerS { get; set; }

    /// <summary>Kinematic viscosity of the water, m2/s.</summary>
    public double Viscosity { get; set; } = Physics.KinematicViscosity(20);
}
