namespace RackController.Plant;

/// <summary>The pressure of the air at an altitude and what follows from it, by FAO Irrigation and Drainage Paper 56
/// (Allen et al. 1998), as quoted by the library pyet.</summary>
internal static class Atmosphere
{
    /// <summary>One standard atmosphere, kPa.</summary>
    public const double StandardKPa = 101.325;

    /// <summary>Mean pressure, kPa: FAO-56 equation 7, P = 101.3 ((293 - 0.0065 z) / 293)^5.26.</summary>
    /// <param name="altitudeM">Height above sea level, m.</param>
    public static double PressureKPa(double altitudeM) => 101.3 * Math.Pow((293 - 0.0065 * altitudeM) / 293, 5.26);

    /// <summary>Psychrometric constant, kPa/K: FAO-56 equation 8, g = 0.665e-3 P.</summary>
    /// <param name="pressureKPa">Pressure of the air, kPa.</param>
    public static double PsychrometricKPaPerK(double pressureKPa) => 0.665e-3 * pressureKPa;
}
