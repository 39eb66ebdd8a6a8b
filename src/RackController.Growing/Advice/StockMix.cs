using RackController.Model;

namespace RackController.Growing;

/// <summary>
/// How much of a stock solution brings water to a conductivity: C1 V1 = C2 V2 with what each adds to the water's own conductivity. It
/// takes conductivities to add up, which they do only roughly and below 3 mS/cm: ions hinder each other, salts conduct differently for
/// their weight, and meters differ. So it is a beginning, and a meter has the last word.
/// </summary>
/// <param name="TapMsPerCm">Conductivity of the water, mS/cm at 25 degrees Celsius: from 0.</param>
/// <param name="TargetMsPerCm">Conductivity that is wanted, mS/cm: from that of the water.</param>
/// <param name="AddsMsPerCm">What 1 mL of the stock, made up with water to 1 L, adds, mS/cm: above 0.</param>
public sealed record StockMix(double TapMsPerCm, double TargetMsPerCm, double AddsMsPerCm)
{
    private const double MlPerL = 1000;

    /// <summary>What stands below every table.</summary>
    public const string Limits =
        "Conductivities add up only roughly, and salts conduct differently for their weight: put in nine tenths, stir, measure, then the "
        + "rest. Never pour two stocks together undiluted: they may fall out.";

    /// <summary>Stock for each litre of the mixed solution, mL.</summary>
    public double DoseMlPerL => (TargetMsPerCm - TapMsPerCm) / AddsMsPerCm;

    /// <summary>Whether the stock is strong enough to reach the target at all.</summary>
    public bool IsPossible => DoseMlPerL < MlPerL;

    /// <summary>Stock in so much of the mixed solution, mL: made up to that volume with water.</summary>
    /// <param name="solutionL">The mixed solution, L.</param>
    public double StockInMl(double solutionL) => DoseMlPerL * solutionL;

    /// <summary>Stock to pour on top of so much water, mL.</summary>
    /// <param name="waterL">The water, L.</param>
    public double StockOnTopMl(double waterL) => waterL * DoseMlPerL / (1 - DoseMlPerL / MlPerL);

    /// <summary>Dry salts in so much of the mixed solution instead, g, by the proportion of <see cref="Conductivity"/>.</summary>
    /// <param name="solutionL">The mixed solution, L.</param>
    public double SaltsG(double solutionL) => (TargetMsPerCm - TapMsPerCm) * Conductivity.GPerLPerMsPerCm * solutionL;

    /// <summary>Stock that brings a reservoir from what it has to the target, mL; negative never: see <see cref="ReplacedL"/>.</summary>
    /// <param name="reservoirL">What is in it, L.</param>
    /// <param name="nowMsPerCm">Its conductivity now, mS/cm, at most the target.</param>
    public double CorrectingMl(double reservoirL, double nowMsPerCm) => (TargetMsPerCm - nowMsPerCm) / AddsMsPerCm * reservoirL;

    /// <summary>How much of a reservoir that is too strong has to be let out and filled up with water again, L.</summary>
    /// <param name="reservoirL">What is in it, L.</param>
    /// <param name="nowMsPerCm">Its conductivity now, mS/cm, above the target and above the water's.</param>
    public double ReplacedL(double reservoirL, double nowMsPerCm) =>
        reservoirL * (nowMsPerCm - TargetMsPerCm) / (nowMsPerCm - TapMsPerCm);

    /// <summary>The table of a reservoir in lines, without a point at their ends.</summary>
    /// <param name="reservoir">The reservoir.</param>
    /// <param name="nowMsPerCm">Its conductivity now, mS/cm; null where nobody measured it.</param>
    public IEnumerable<string> Lines(Reservoir reservoir, double? nowMsPerCm)
    {
        ArgumentNullException.ThrowIfNull(reservoir);
        yield return $"({TargetMsPerCm:0.##} - {TapMsPerCm:0.##}) mS/cm / {AddsMsPerCm:0.###} mS/cm for 1 mL/L = {DoseMlPerL:0.00} mL/L"
            + (TargetMsPerCm > Conductivity.MostMsPerCm ? $"; above {Conductivity.MostMsPerCm:0} mS/cm that is far from exact" : "");
        foreach (var topUpL in (double[])[10, 20, 50])
        {
            yield return $"top up by {topUpL:0} L: {Amount(topUpL)}";
        }

        yield return $"fill all {reservoir.NormalVolumeL:0} L: {Amount(reservoir.NormalVolumeL)}";
        if (nowMsPerCm is { } now)
        {
            yield return now <= TargetMsPerCm
                ? $"from {now:0.##} to {TargetMsPerCm:0.##} mS/cm: ({TargetMsPerCm:0.##} - {now:0.##}) / {AddsMsPerCm:0.###} x "
                    + $"{reservoir.NormalVolumeL:0} L = {CorrectingMl(reservoir.NormalVolumeL, now):0} mL of stock"
                : $"from {now:0.##} down to {TargetMsPerCm:0.##} mS/cm: {reservoir.NormalVolumeL:0} L x "
                    + $"({now:0.##} - {TargetMsPerCm:0.##}) / ({now:0.##} - {TapMsPerCm:0.##}) = let out "
                    + $"{ReplacedL(reservoir.NormalVolumeL, now):0} L and fill up with water";
        }
    }

    private string Amount(double litres)
    {
        var (madeUp, onTop) = ($"{StockInMl(litres):0} mL", $"{StockOnTopMl(litres):0} mL");
        return $"{DoseMlPerL:0.00} x {litres:0} = {madeUp} of stock, made up with water"
            + $"{(madeUp == onTop ? "" : $" ({onTop} on top of it)")}; or {SaltsG(litres):0.#} g of dry salts";
    }
}
