namespace RackController.Plant;

/// <summary>Water vapour in air, by FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), as quoted by the
/// library pyet.</summary>
internal static class HumidAir
{
    /// <summary>Saturation vapour pressure, kPa: FAO-56 equation 11, e = 0.6108 exp(17.27 T / (T + 237.3)).</summary>
    /// <param name="celsius">Temperature.</param>
    public static double SaturationKPa(double celsius) => 0.6108 * Math.Exp(17.27 * celsius / (celsius + 237.3));

    /// <summary>Slope of the saturation vapour pressure curve, kPa/K: FAO-56 equation 13, D = 4098 e / (T + 237.3)^2, which is
    /// the derivative of equation 11.</summary>
    /// <param name="celsius">Temperature.</param>
    /// <param name="saturationKPa">Saturation vapour pressure at that temperature, kPa.</param>
    public static double SlopeKPaPerK(double celsius, double saturationKPa) =>
        4098 * saturationKPa / ((celsius + 237.3) * (celsius + 237.3));

    /// <summary>Vapour pressure deficit, kPa, of air that holds a vapour pressure: of the air itself at the air's temperature,
    /// of a leaf in that air at the leaf's, VPD(leaf) = e(Tleaf) - RH e(Tair).</summary>
    /// <param name="celsius">Temperature of the air, or of the leaf.</param>
    /// <param name="vapourKPa">Vapour pressure of the air, kPa.</param>
    public static double DeficitKPa(double celsius, double vapourKPa) => Math.Max(0, SaturationKPa(celsius) - vapourKPa);

    /// <summary>Relative humidity, %, of air at a temperature that holds a vapour pressure.</summary>
    /// <param name="celsius">Temperature.</param>
    /// <param name="vapourKPa">Vapour pressure, kPa.</param>
    public static double RelativePercent(double celsius, double vapourKPa) =>
        Math.Min(100, 100 * vapourKPa / SaturationKPa(celsius));
}
