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
    public double VolumeL => rack.Dynamics.Part(RackLayout.Tray(index)) * Litres.PerM3;

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

    /// <summary>Vapour pressure deficit of the air, kPa.</summary>
    public double VapourDeficitKPa => rack.Value(RackQuantity.VapourDeficit, Number);

    /// <summary>Temperature of the crop's leaves, degrees Celsius.</summary>
    public double CanopyTemperatureC =>
        rack.Dynamics.Climate.LeafC(index, rack.Dynamics.State, rack.TranspiredKgPerS(index));

    /// <summary>Vapour pressure deficit between the crop's leaves and the air, kPa.</summary>
    public double LeafVapourDeficitKPa => HumidAir.DeficitKPa(CanopyTemperatureC, VapourKPa);

    /// <summary>What the crop gives off now, mL/h; a millilitre of water is a gram.</summary>
    public double TranspirationMlPerH => rack.TranspiredKgPerS(index) * 3.6e6;

    /// <summary>Electrical conductivity of the water held by the media, mS/cm at 25 degrees Celsius.</summary>
    public double MediaConductivityMsPerCm => RackSolutes.ConductivityMsPerCm(
        rack.Dynamics.State[rack.Dynamics.Layout.MediaSalts(index)], rack.Dynamics.State[rack.Dynamics.Layout.Media(index)]);

    private double VapourKPa => rack.Dynamics.State[rack.Dynamics.Layout.VapourKPa(index)];
}
