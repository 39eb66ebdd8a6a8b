namespace RackController.Plant;

/// <summary>Water vapour in air, by FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), as quoted by the
/// library pyet.</summary>
internal static class HumidAir
{
    /// <summary>Saturation vapour pressure, kPa: FAO-56 equation 11, e = 0.6108 exp(17.27 T / (T + 237.3)).</summary>
    /// <param name="celsius">Temperature.</param>
    public static double SaturationKPa(double celsius) => 0.6108 * Math.Exp(17.27 * celsius / (celsius + 237.3));

    /// <summary>Vapour pressure deficit, kPa, of air at a temperature that holds a vapour pressure.</summary>
    /// <param name="celsius">Temperature.</param>
    /// <param name="vapourKPa">Vapour pressure, kPa.</param>
    public static double DeficitKPa(double celsius, double vapourKPa) => Math.Max(0, SaturationKPa(celsius) - vapourKPa);

    /// <summary>Relative humidity, %, of air at a temperature that holds a vapour pressure.</summary>
    /// <param name="celsius">Temperature.</param>
    /// <param name="vapourKPa">Vapour pressure, kPa.</param>
    public static double RelativePercent(double celsius, double vapourKPa) =>
        Math.Min(100, 100 * vapourKPa / SaturationKPa(celsius));
}
