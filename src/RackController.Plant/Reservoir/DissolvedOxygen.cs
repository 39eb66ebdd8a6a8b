namespace RackController.Plant;

/// <summary>
/// How much oxygen water holds when it is saturated with air: Benson and Krause 1984 (Limnol. Oceanogr. 29:620) as APHA 1985 has it;
/// the fresh-water term as read at swatplus.gitbook.io (oxygen saturation concentration), the terms of salinity and pressure from
/// memory. Older tables that instrument manuals still print give up to 0.1 mg/L more.
/// </summary>
internal static class DissolvedOxygen
{
    private const double ZeroCelsiusK = 273.15;
    private const double WarmestC = 40;

    /// <summary>Saturation concentration, mg/L, which is g/m3.</summary>
    /// <param name="celsius">Temperature of the water, 0 to 40; what a dry pump heats beyond counts as 40, where the equation ends.</param>
    /// <param name="salinityGPerKg">Salts in the water, g/kg.</param>
    /// <param name="pressureKPa">Pressure of the air, kPa.</param>
    public static double SaturationMgPerL(double celsius, double salinityGPerKg, double pressureKPa)
    {
        celsius = Math.Min(celsius, WarmestC);
        var inverse = 1 / (celsius + ZeroCelsiusK);
        var fresh = -139.34411 + inverse * (1.575701e5 + inverse * (-6.642308e7 + inverse * (1.243800e10 - inverse * 8.621949e11)));
        var salts = salinityGPerKg * (0.017674 + inverse * (-10.754 + inverse * 2140.7));
        return Math.Exp(fresh - salts) * PressureShare(celsius, inverse, pressureKPa / Atmosphere.StandardKPa);
    }

    // P (1 - Pwv / P) (1 - theta P) / ((1 - Pwv) (1 - theta)), pressures in atmospheres.
    private static double PressureShare(double celsius, double inverse, double pressure)
    {
        var vapour = Math.Exp(11.8571 + inverse * (-3840.7 - inverse * 216_961));
        var theta = 0.000975 + celsius * (-1.426e-5 + celsius * 6.436e-8);
        return (pressure - vapour) * (1 - theta * pressure) / ((1 - vapour) * (1 - theta));
    }
}
