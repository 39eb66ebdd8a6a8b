using CsCheck;
using RackController.Model;

namespace RackController.Testing;

/// <summary>Random parts of a rack's water, within the bounds that Model states for each. Most are as the trade builds them; some
/// are as odd as a rack file allows.</summary>
public static class RandomParts
{
    /// <summary>A number from 0 to 1, each as likely as any other, which doubles of a generator are not: they like to be tiny.</summary>
    public static Gen<double> Share { get; } = Gen.Int[0, 999_983].Select(part => part / 999_983.0);

    /// <summary>A tray whose standpipe ends below its rim.</summary>
    public static Gen<FloodTray> Tray { get; } =
        from lengthMm in Mostly(600, 1300, 100, 3000)
        from widthMm in Mostly(400, 800, 100, 3000)
        from rimMm in Mostly(60, 120, 10, 500)
        from standpipeShare in Mostly(0.4, 0.7, 0.02, 0.99)
        from standpipeBoreMm in Mostly(20, 40, 2, 200)
        from weepMm in Gen.Frequency((1, Gen.Const(0.0)), (8, Mostly(4, 12, 0.5, 50)))
        from insertTrays in Gen.Int[0, 40]
        from displacedShare in Fine(0, 0.9)
        from displacedToMm in Mostly(0, 60, 0, 1000)
        select new FloodTray(
            lengthMm, widthMm, rimMm, Math.Max(5, standpipeShare * rimMm), standpipeBoreMm, weepMm,
            new TrayContents(insertTrays, "coir", displacedShare, displacedToMm));

    /// <summary>A pan under a rack that holds much or hardly anything.</summary>
    public static Gen<DripTray> DripTray { get; } =
        from capacityL in Mostly(20, 80, 1, 5000)
        from depthMm in Mostly(40, 120, 10, 1000)
        select new DripTray(capacityL, depthMm);

    /// <summary>A branch whose outlet lies above the water or below it.</summary>
    public static Gen<SupplyBranch> Branch { get; } =
        from boreMm in Mostly(10, 20, 2, 200)
        from lengthMm in Mostly(100, 500, 0, 10_000)
        from minorLossK in Mostly(10, 300, 0, 10_000)
        from outletMm in Mostly(0, 90, 0, 1000)
        select new SupplyBranch(boreMm, lengthMm, minorLossK, outletMm);

    /// <summary>A tank, small or large.</summary>
    public static Gen<Reservoir> Reservoir { get; } =
        from capacityL in Mostly(60, 300, 1, 5000)
        from depthMm in Mostly(250, 600, 50, 3000)
        from floorMm in Mostly(0, 100, 0, 3000)
        from filledShare in Mostly(0.7, 0.95, 0.02, 1)
        from intakeShare in Mostly(0.05, 0.15, 0, 0.99)
        select new Reservoir(capacityL, depthMm, floorMm, filledShare * capacityL, intakeShare * depthMm);

    /// <summary>A pump, strong or too weak for the upper tiers.</summary>
    public static Gen<PumpCurve> Pump { get; } =
        from headM in Mostly(2, 5, 0.05, 50)
        from flowLpm in Mostly(20, 90, 0.5, 1000)
        from exponent in Gen.Frequency((2, Gen.Const(2.0)), (1, Fine(0.5, 5)))
        select new PumpCurve(headM, flowLpm, exponent);

    /// <summary>A riser with a check valve or without.</summary>
    public static Gen<SupplyRiser> Riser { get; } =
        from boreMm in Mostly(16, 32, 2, 200)
        from lengthMm in Mostly(500, 2000, 0, 10_000)
        from runLossK in Mostly(0, 20, 0, 1000)
        from teeLossK in Mostly(0, 1, 0, 100)
        from hasCheckValve in Gen.Bool
        select new SupplyRiser(boreMm, lengthMm, runLossK, teeLossK, hasCheckValve);

    /// <summary>A drain stack that carries everything or hardly anything.</summary>
    public static Gen<DrainStack> Stack { get; } =
        from boreMm in Mostly(30, 60, 2, 200)
        from capacityLpm in Mostly(5, 60, 0, 1000)
        select new DrainStack(boreMm, capacityLpm);

    /// <summary>A number that mostly lies within a usual range, and sometimes anywhere within what is allowed.</summary>
    /// <param name="usualLow">From here.</param>
    /// <param name="usualHigh">To here.</param>
    /// <param name="low">The least that is allowed.</param>
    /// <param name="high">The most that is allowed.</param>
    public static Gen<double> Mostly(double usualLow, double usualHigh, double low, double high) => Gen.Frequency(
        (8, Fine(usualLow, usualHigh)), (2, Fine(low, high)), (1, Gen.OneOf(low, high)));

    /// <summary>A number anywhere in a range.</summary>
    /// <param name="low">From here.</param>
    /// <param name="high">To here.</param>
    public static Gen<double> Anywhere(double low, double high) => Share.Select(share => low + share * (high - low));

    /// <summary>A number as a person would write it: any thousandth of a range.</summary>
    /// <param name="low">From here.</param>
    /// <param name="high">To here.</param>
    public static Gen<double> Fine(double low, double high) =>
        Gen.Int[0, 1000].Select(part => Math.Round(low + (high - low) * part / 1000, 3));
}
