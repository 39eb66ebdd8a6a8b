using RackController.Model;

namespace RackController.Plant;

/// <summary>The parts that hold and move water on one tier, and how they act at a depth. It keeps no state.</summary>
internal sealed class TierWater
{
    // A leak or evaporation fades with the last millimetre instead of ending at once.
    private const double FadesBelowM = 0.001;
    private const double CoveredOverM = 0.001;

    private readonly TrayBasin basin;
    private readonly Weep weep;
    private readonly Standpipe standpipe;
    private readonly double floorM;
    private readonly double outletM;

    private readonly double weepShare;
    private readonly double standpipeShare;

    /// <summary>Reads what a tier is made of.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="measured">What timed floods told of its rack; null where nobody timed any.</param>
    private TierWater(Tier tier, MeasuredRack? measured)
    {
        weepShare = measured?.Tier(tier.Number)?.Weep?.Value ?? 1;
        standpipeShare = measured?.Standpipe?.Value ?? 1;
        basin = new TrayBasin(tier.Tray);
        weep = new Weep(tier.Tray.WeepBoreMm / 1000);
        standpipe = new Standpipe(tier.Tray.StandpipeHeightMm / 1000, tier.Tray.StandpipeBoreMm / 1000);
        Media = new MediaStore(tier.Tray.Contents.InsertTrays);
        floorM = tier.TrayFloorHeightMm / 1000;
        outletM = floorM + tier.Branch.OutletAboveTrayFloorMm / 1000;
    }

    /// <summary>The tiers of a rack, bottom first.</summary>
    /// <param name="rack">The rack.</param>
    public static TierWater[] Of(Rack rack) => [.. rack.Tiers.Select(tier => new TierWater(tier, rack.Measured))];

    /// <summary>What the crop roots in.</summary>
    public MediaStore Media { get; }

    /// <summary>Depth over the tray's floor, m, when it holds a volume.</summary>
    public double DepthM(double volume) => basin.DepthM(volume);

    /// <summary>Volume that it holds at a depth over the tray's floor, m3.</summary>
    public double VolumeM3(double depthM) => basin.VolumeM3(depthM);

    /// <summary>Area of free water at a depth, m2.</summary>
    public double AreaAtM2(double depthM) => basin.AreaAtM2(depthM);

    /// <summary>What standpipe and weep would drain into an empty stack, m3/s.</summary>
    public double Drain(double depthM, bool weepBlocked, double standpipeOpenShare) =>
        standpipeOpenShare * standpipeShare * standpipe.Flow(depthM) + (weepBlocked ? 0 : weepShare * weep.Flow(depthM));

    /// <summary>What is spilled, m3/s: over the edge, and through a leak.</summary>
    public double Spill(double depthM, double leak) => basin.OverEdge(depthM) + leak * FadeAt(depthM);

    /// <summary>What the branch meets: its outlet in air, or the tray's surface once that covers it. Water can then run back into
    /// it; how freely grows over a millimetre, so that it ends as gently as it would by swallowing air.</summary>
    public BranchEnd EndAt(double depthM, bool open)
    {
        var surface = floorM + depthM;
        var covered = Math.Clamp((surface - outletM) / CoveredOverM, 0, 1);
        return new BranchEnd(open, Math.Max(surface, outletM), covered);
    }

    /// <summary>What is left of a flow that needs water, over the last millimetre of depth: 0 to 1.</summary>
    public static double FadeAt(double depthM) => Math.Min(1, depthM / FadesBelowM);
}
