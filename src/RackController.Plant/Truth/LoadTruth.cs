namespace RackController.Plant;

/// <summary>What is really so with one simulated load: a live, read-only view.</summary>
public sealed class LoadTruth
{
    private const double JoulesPerKWh = 3.6e6;
    private readonly LoadElectrics load;
    private readonly SiteElectrics electrics;

    internal LoadTruth(LoadElectrics load, SiteElectrics electrics)
    {
        this.load = load;
        this.electrics = electrics;
    }

    /// <summary>Whether it was last told to be on.</summary>
    public bool Commanded => load.Commanded;

    /// <summary>Whether its relay's contact is closed: a welded one is, whatever it was told.</summary>
    public bool RelayOn => load.RelayOn;

    /// <summary>Whether it draws power: contact closed and supply there, and in a brown-out enough of it for a light.</summary>
    public bool Powered => load.Powered;

    /// <summary>Current now, A.</summary>
    public double CurrentA => load.CurrentA;

    /// <summary>Energy drawn since the start, kWh.</summary>
    public double EnergyKWh => load.EnergyJ(electrics.Now) / JoulesPerKWh;
}
