namespace RackController.Plant;

/// <summary>
/// What temperature and salts make of the water's oxygen: how much it holds, and how fast it dissolves and is used up. Both change over
/// hours, so it is found anew only when they have moved by what no probe could tell, 0.01 K and 0.01 g/kg: less than 0.003 mg/L.
/// </summary>
internal sealed class OxygenLimits(double pressureKPa)
{
    private const double SameWithinK = 0.01;
    private const double SameWithinGPerKg = 0.01;

    private double atC = double.NaN;
    private double atGPerKg = double.NaN;

    /// <summary>What the water holds when it is saturated with air, g/m3.</summary>
    public double SaturatedGPerM3 { get; private set; }

    /// <summary>How many times as fast oxygen dissolves as at 20 degrees Celsius.</summary>
    public double TransferGrowth { get; private set; }

    /// <summary>How many times as fast oxygen is used up as at 20 degrees Celsius.</summary>
    public double UptakeGrowth { get; private set; }

    /// <summary>Takes over the water's temperature and salts.</summary>
    /// <param name="celsius">Temperature.</param>
    /// <param name="salinityGPerKg">Salts, g/kg.</param>
    public void Take(double celsius, double salinityGPerKg)
    {
        if (Math.Abs(celsius - atC) < SameWithinK && Math.Abs(salinityGPerKg - atGPerKg) < SameWithinGPerKg)
        {
            return;
        }

        atC = celsius;
        atGPerKg = salinityGPerKg;
        SaturatedGPerM3 = DissolvedOxygen.SaturationMgPerL(celsius, salinityGPerKg, pressureKPa);
        TransferGrowth = Aeration.TransferGrowth(celsius);
        UptakeGrowth = Aeration.UptakeGrowth(celsius);
    }
}
