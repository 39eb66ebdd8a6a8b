using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Salts dissolved in water. They go where water goes, except that vapour leaves them behind and a crop takes less of them than the
/// water it drinks holds. Electrical conductivity is proportional to their concentration (<see cref="Conductivity"/>), compensated to 25
/// degrees Celsius as meters do.
/// </summary>
internal static class Salts
{
    // How much of the concentration of the water that it drinks a crop takes up, and how long the water in the media and a flood
    // round it take to mix: assumptions of ours, common practice, no source.
    private const double UptakeShare = 0.6;
    private const double MixingS = 1800;

    private const double GPerM3PerMsPerCm = Conductivity.GPerLPerMsPerCm * Litres.PerM3;
    private const double MgPerG = 1000;

    // The concentration of the last millilitre is that of what is in it and no more: it never divides by nothing.
    private const double SmallestM3 = 1e-6;

    /// <summary>Concentration, g/m3, which is mg/L.</summary>
    /// <param name="saltsG">Salts in a store, g.</param>
    /// <param name="volumeM3">Water in it, m3.</param>
    public static double GPerM3(double saltsG, double volumeM3) => saltsG / Math.Max(volumeM3, SmallestM3);

    /// <summary>Concentration of water of a conductivity, g/m3.</summary>
    /// <param name="msPerCm">Electrical conductivity at 25 degrees Celsius, mS/cm.</param>
    public static double GPerM3At(double msPerCm) => GPerM3PerMsPerCm * msPerCm;

    /// <summary>Electrical conductivity at 25 degrees Celsius, mS/cm.</summary>
    /// <param name="gPerM3">Concentration, g/m3.</param>
    public static double MsPerCm(double gPerM3) => gPerM3 / GPerM3PerMsPerCm;

    /// <summary>Salinity, g/kg, with the water taken as 1 kg/L.</summary>
    /// <param name="gPerM3">Concentration, g/m3.</param>
    public static double SalinityGPerKg(double gPerM3) => gPerM3 / MgPerG;

    /// <summary>Salts that a crop takes up with the water it drinks, g/s.</summary>
    /// <param name="drawnM3PerS">Water it draws from the media.</param>
    /// <param name="mediaGPerM3">Concentration in the media.</param>
    public static double TakenUpGPerS(double drawnM3PerS, double mediaGPerM3) => UptakeShare * drawnM3PerS * mediaGPerM3;

    /// <summary>Salts that mixing carries out of the media into the flood round it, g/s; negative into the media.</summary>
    /// <param name="heldM3">Water in the media.</param>
    /// <param name="mediaGPerM3">Concentration there.</param>
    /// <param name="trayGPerM3">Concentration in the tray.</param>
    /// <param name="coveredShare">How far the flood reaches the media: 0 in a drained tray, 1.</param>
    public static double MixedOutGPerS(double heldM3, double mediaGPerM3, double trayGPerM3, double coveredShare) =>
        coveredShare * heldM3 / MixingS * (mediaGPerM3 - trayGPerM3);
}
