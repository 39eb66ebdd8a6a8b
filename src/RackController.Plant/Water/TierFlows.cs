namespace RackController.Plant;

/// <summary>How fast water moves into and out of each tray and its media now, m3/s.</summary>
internal sealed class TierFlows(int tiers)
{
    /// <summary>From the branch into the tray; negative when water runs back.</summary>
    public double[] In { get; } = new double[tiers];

    /// <summary>From the tray through weep and standpipe to the reservoir.</summary>
    public double[] Drain { get; } = new double[tiers];

    /// <summary>From the pump out of a loose hose.</summary>
    public double Hose { get; set; }

    /// <summary>From the tray into the drip tray, and from there onto the floor.</summary>
    public double[] Spill { get; } = new double[tiers];

    /// <summary>From the tray into the media.</summary>
    public double[] Uptake { get; } = new double[tiers];

    /// <summary>From the media into the crop.</summary>
    public double[] Drawn { get; } = new double[tiers];
}
