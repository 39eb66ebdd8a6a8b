namespace RackController.Plant;

/// <summary>
/// The reference evapotranspiration of FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), equations 6 and 53 (from
/// memory; daily form as quoted by the library pyet):
/// ET = (0.408 D R + g A / (T + 273) u d) / (D + g (1 + S u)), in mm for the length of time that A and R are for.
/// </summary>
/// <param name="Aerodynamic">A, K mm s/(kPa m): 900 for a day, 37 for an hour, 37/3600 for a second.</param>
/// <param name="Surface">S, s/m, how much the leaves themselves resist: 0.34 in FAO-56. The hourly form of ASCE-EWRI 2005
/// (from memory) has 0.24 by day, for 50 s/m, and 0.96 by night, for 200 s/m, since stomata close in the dark.</param>
internal readonly record struct PenmanMonteith(double Aerodynamic, double Surface)
{
    private const double MmPerMJPerM2 = 0.408;
    private const double ZeroCelsiusK = 273;

    /// <summary>Water that a surface of reference gives off, mm; negative where dew forms.</summary>
    /// <param name="energyMJPerM2">R, net radiation less what warms the ground, MJ/m2 in that time.</param>
    /// <param name="celsius">T, temperature of the air.</param>
    /// <param name="slopeKPaPerK">D, slope of the saturation vapour pressure curve, kPa/K.</param>
    /// <param name="deficitKPa">d, vapour pressure deficit of the air, kPa.</param>
    /// <param name="windMPerS">u, wind at 2 m, m/s.</param>
    /// <param name="psychrometricKPaPerK">g, psychrometric constant, kPa/K.</param>
    public double WaterMm(
        double energyMJPerM2, double celsius, double slopeKPaPerK, double deficitKPa, double windMPerS, double psychrometricKPaPerK) =>
        (MmPerMJPerM2 * slopeKPaPerK * energyMJPerM2
            + psychrometricKPaPerK * Aerodynamic / (celsius + ZeroCelsiusK) * windMPerS * deficitKPa)
        / (slopeKPaPerK + psychrometricKPaPerK * (1 + Surface * windMPerS));
}
