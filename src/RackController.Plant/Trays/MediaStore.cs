using NodaTime;

namespace RackController.Plant;

/// <summary>
/// Water held by what the crop roots in: taken up from the flooded tray towards container capacity, given off by the crop.
/// First order in what is still missing. Capacity and time are assumptions of ours (no source found for tray media) that a grower
/// would fit by weighing a tray before a flood and after it.
/// </summary>
public readonly struct MediaStore
{
    /// <summary>Water that one 10 x 20 in insert tray gives and takes between dry and container capacity, m3.</summary>
    public const double PerInsertTrayM3 = 1.0e-3;

    private const double UptakeTimeS = 300;
    private const double WettedAtM = 0.005;
    private const double StressedBelowShare = 0.2;

    /// <summary>The media of a tray.</summary>
    /// <param name="insertTrays">How many insert trays stand in it, from 0.</param>
    public MediaStore(int insertTrays) => CapacityM3 = insertTrays * PerInsertTrayM3;

    /// <summary>Water at container capacity, m3; 0 in an empty tray.</summary>
    public double CapacityM3 { get; }

    /// <summary>What it takes from the tray, m3/s.</summary>
    /// <param name="heldM3">What it holds.</param>
    /// <param name="depthM">Depth of water in the tray, m.</param>
    public double Uptake(double heldM3, double depthM) =>
        Math.Max(0, CapacityM3 - heldM3) / UptakeTimeS * CoveredShare(depthM);

    /// <summary>Share of what was missing that it has taken up after standing in water: 0 to 1.</summary>
    /// <param name="wet">How long.</param>
    public static double RefilledShare(Duration wet) => 1 - Math.Exp(-wet.TotalSeconds / UptakeTimeS);

    /// <summary>How far the water in the tray reaches it, 0 to 1.</summary>
    /// <param name="depthM">Depth of water in the tray, m.</param>
    public static double CoveredShare(double depthM) => Math.Clamp(depthM / WettedAtM, 0, 1);

    /// <summary>Share of its thirst that a crop can still draw: falls to 0 as the media dries.</summary>
    /// <param name="heldM3">What it holds.</param>
    public double Supply(double heldM3) =>
        CapacityM3 <= 0 ? 0 : Math.Clamp(heldM3 / (StressedBelowShare * CapacityM3), 0, 1);
}
