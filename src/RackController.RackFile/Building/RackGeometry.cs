namespace RackController.RackFile.Building;

/// <summary>What a rack's shape is taken to be where its file does not say. Common practice, no source, unless one is
/// named.</summary>
internal static class RackGeometry
{
    private const double LowestTrayMm = 450;
    private const double HighestTrayMm = 1530;
    private const double WidestSpacingMm = 450;
    private const double HoseToRiserMm = 600;

    /// <summary>Height of a tray's floor: the lowest at 450 mm over the reservoir, the others evenly above it, at most 450 mm
    /// apart and the highest at most at 1530 mm, so that a person can see into it.</summary>
    /// <param name="number">The tier's number, 1 at the bottom.</param>
    /// <param name="tiers">How many there are.</param>
    public static double TrayHeightMm(int number, int tiers) => tiers == 1
        ? LowestTrayMm
        : LowestTrayMm + (number - 1) * Math.Min(WidestSpacingMm, (HighestTrayMm - LowestTrayMm) / (tiers - 1));

    /// <summary>Length of pipe and hose from the pump to the lowest tee.</summary>
    /// <param name="lowestTrayMm">Height of the lowest tray's floor, mm.</param>
    public static double RunLengthMm(double lowestTrayMm) => lowestTrayMm + HoseToRiserMm;

    /// <summary>What a drain stack carries when 7/24 of its section is filled: q = 27.8 r^(5/3) d^(8/3), q in US gal/min and d
    /// in inches, of Wyly and Eaton, "Capacities of plumbing stacks in buildings", NBS BMS 132 (1952). It was made for
    /// taller and wider stacks: a size to start from, to be replaced by a measurement.</summary>
    /// <param name="boreMm">Inside diameter, mm.</param>
    public static double DrainStackCapacityLpm(double boreMm)
    {
        var gallonsPerMinute =
            27.8 * Math.Pow(7.0 / 24, 5.0 / 3) * Math.Pow(UnitsNet.Length.FromMillimeters(boreMm).Inches, 8.0 / 3);
        return UnitsNet.VolumeFlow.FromUsGallonsPerMinute(gallonsPerMinute).LitersPerMinute;
    }

    /// <summary>Water in the riser and the hose to it, L; branches are small.</summary>
    /// <param name="shape">The rack's shape.</param>
    public static double RiserContentL(RackShape shape) => Math.PI / 4 * Math.Pow(shape.Supply.BoreMm / 1000, 2)
        * (shape.Supply.RunLengthMm + shape.TrayHeightsMm[^1] - shape.TrayHeightsMm[0]);

    /// <summary>Water in a tray at a depth, L.</summary>
    /// <param name="tray">The tray.</param>
    /// <param name="depthMm">Depth, mm.</param>
    public static double HeldL(Model.FloodTray tray, double depthMm) => tray.AreaM2
        * (depthMm - tray.Contents.DisplacedShare * Math.Min(depthMm, tray.Contents.DisplacedToMm));
}
