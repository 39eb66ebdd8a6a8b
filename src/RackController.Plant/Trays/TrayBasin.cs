using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Depth from volume of a straight-walled tray in which media and insert trays take up a share of the plan area to a depth,
/// and the edge over which it runs when nothing else carries the water away.
/// </summary>
internal readonly struct TrayBasin
{
    // Broad edge as a weir; the coefficient of a broad crest, C = (2/3)^1.5 sqrt(g) = 1.705 (critical depth on the crest).
    private const double EdgeWeirCoefficient = 1.7;

    private readonly double areaM2;
    private readonly double freeAreaM2;
    private readonly double displacedToM;
    private readonly double edgeM;
    private readonly double perimeterM;

    public TrayBasin(FloodTray tray)
    {
        areaM2 = tray.AreaM2;
        freeAreaM2 = areaM2 * (1 - tray.Contents.DisplacedShare);
        displacedToM = tray.Contents.DisplacedToMm / 1000;
        edgeM = tray.RimDepthMm / 1000;
        perimeterM = 2 * (tray.LengthMm + tray.WidthMm) / 1000;
    }

    /// <summary>Depth over the tray's floor, m.</summary>
    /// <param name="volume">Free water, m3; below 0 counts as none.</param>
    public double DepthM(double volume)
    {
        var below = freeAreaM2 * displacedToM;
        return volume <= 0 ? 0 : volume <= below ? volume / freeAreaM2 : displacedToM + (volume - below) / areaM2;
    }

    /// <summary>Free water, m3, at a depth over the tray's floor.</summary>
    /// <param name="depthM">Depth, m.</param>
    public double VolumeM3(double depthM) =>
        freeAreaM2 * Math.Min(depthM, displacedToM) + areaM2 * Math.Max(0, depthM - displacedToM);

    /// <summary>Area of free water at a depth, m2: how much volume one metre more would hold.</summary>
    /// <param name="depthM">Depth, m.</param>
    public double AreaAtM2(double depthM) => depthM < displacedToM ? freeAreaM2 : areaM2;

    /// <summary>What runs over the edge to the floor, m3/s: a weir as long as the edge, Q = C L H^1.5.</summary>
    /// <param name="depthM">Depth, m.</param>
    public double OverEdge(double depthM)
    {
        var head = depthM - edgeM;
        return head <= 0 ? 0 : EdgeWeirCoefficient * perimeterM * head * Math.Sqrt(head);
    }
}
