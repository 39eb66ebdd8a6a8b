namespace RackController.Plant;

/// <summary>What is really so on one tier of a simulated rack: a live, read-only view.</summary>
public sealed class TierTruth
{
    private readonly SimulatedRack rack;
    private readonly int index;

    internal TierTruth(SimulatedRack rack, int index)
    {
        this.rack = rack;
        this.index = index;
    }

    /// <summary>The tier's number, 1 at the bottom.</summary>
    public int Number => rack.Rack.Tiers[index].Number;

    /// <summary>Depth of water in the tray, mm.</summary>
    public double DepthMm => rack.Dynamics.TrayDepthM(index) * 1000;

    /// <summary>Free water in the tray, L.</summary>
    public double VolumeL => rack.Dynamics.State[RackLayout.Tray(index)] * Litres.PerM3;

    /// <summary>Water held by the media, L.</summary>
    public double MediaWaterL => rack.Dynamics.State[rack.Dynamics.Layout.Media(index)] * Litres.PerM3;

    /// <summary>How fast the water in the tray rises, mm/min; negative while it falls.</summary>
    public double RiseMmPerMin => 60_000 * rack.Dynamics.Rate(RackLayout.Tray(index))
        / rack.Dynamics.Water.TrayAreaM2(index, rack.Dynamics.TrayDepthM(index));

    /// <summary>Whether the tier's branch lets water pass.</summary>
    public bool ValveOpen => rack.Inputs.ValveOpen[index];

    /// <summary>Photon flux that the crop gets now, umol/m2/s.</summary>
    public double PpfdUmolPerM2S => rack.Inputs.Ppfd[index];

    /// <summary>Light that the crop has had since the start, mol/m2.</summary>
    public double LightIntegralMolPerM2 => rack.Light.MolPerM2(index, rack.Dynamics.Now);

    /// <summary>Air temperature, degrees Celsius.</summary>
    public double AirTemperatureC => rack.Value(RackQuantity.AirTemperature, Number);

    /// <summary>Relative humidity of the air, %.</summary>
    public double AirHumidityPercent => rack.Value(RackQuantity.AirHumidity, Number);
}
