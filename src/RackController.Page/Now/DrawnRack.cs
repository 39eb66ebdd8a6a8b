namespace RackController.Page;

/// <summary>Where the parts of a rack stand in its drawing, in its own units: 340 wide, a tier every 84.</summary>
internal static class DrawnRack
{
    /// <summary>Width of the drawing.</summary>
    public const int Width = 340;

    /// <summary>From one tier to the next.</summary>
    public const int TierHeight = 84;

    /// <summary>From the rim of a tray to its floor.</summary>
    public const int TrayDepth = 28;

    /// <summary>Height of the reservoir.</summary>
    public const int ReservoirDepth = 54;

    /// <summary>Where a tray's rim is, below the top of its tier.</summary>
    public const int RimBelow = 42;

    /// <summary>Height of the whole.</summary>
    public static int Height(RackView rack) => ReservoirTop(rack) + ReservoirDepth + 10;

    /// <summary>Where the rim of the reservoir is.</summary>
    public static int ReservoirTop(RackView rack) => (rack.Tiers.Length * TierHeight) + 16;

    /// <summary>A share of a depth, in whole units.</summary>
    public static int Of(double share, int depth) => (int)Math.Round(Math.Clamp(share, 0, 1) * depth);
}
