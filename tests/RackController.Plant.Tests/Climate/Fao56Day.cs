namespace RackController.Plant.Tests;

/// <summary>Net radiation of a day or an hour outdoors by FAO-56 (Allen et al. 1998), equations 21 to 40 from memory, so that its
/// examples can be worked from what they give. Nothing of it is needed under lamps.</summary>
internal static class Fao56Day
{
    private const double DayStefanMJ = 4.903e-9;
    private const double ReflectedShare = 0.23;

    /// <summary>Extraterrestrial radiation, MJ/m2/d (equation 21).</summary>
    public static double ExtraterrestrialMJ(double latitude, int dayOfYear)
    {
        var distance = 1 + 0.033 * Math.Cos(2 * Math.PI * dayOfYear / 365);
        var (phi, delta, sunset) = Sun(latitude, dayOfYear);
        return 24 * 60 / Math.PI * 0.0820 * distance
            * (sunset * Math.Sin(phi) * Math.Sin(delta) + Math.Cos(phi) * Math.Cos(delta) * Math.Sin(sunset));
    }

    /// <summary>Daylight, h (equation 34).</summary>
    public static double DaylightH(double latitude, int dayOfYear) => 24 / Math.PI * Sun(latitude, dayOfYear).Sunset;

    /// <summary>Solar radiation from the hours of sunshine, MJ/m2/d (equation 35).</summary>
    public static double SolarMJ(double latitude, int dayOfYear, double sunshineH) =>
        (0.25 + 0.5 * sunshineH / DaylightH(latitude, dayOfYear)) * ExtraterrestrialMJ(latitude, dayOfYear);

    /// <summary>Net long-wave radiation of a day, MJ/m2/d (equation 39).</summary>
    public static double LongWaveMJ(
        double maxC, double minC, double vapourKPa, double solarMJ, double extraterrestrialMJ, double altitudeM) =>
        DayStefanMJ * (Fourth(maxC) + Fourth(minC)) / 2 * Sky(vapourKPa, solarMJ / ClearSky(extraterrestrialMJ, altitudeM));

    /// <summary>Net radiation of a day, MJ/m2/d (equation 40).</summary>
    public static double NetMJ(double maxC, double minC, double vapourKPa, double solarMJ, double extraterrestrialMJ, double altitudeM) =>
        (1 - ReflectedShare) * solarMJ - LongWaveMJ(maxC, minC, vapourKPa, solarMJ, extraterrestrialMJ, altitudeM);

    /// <summary>Net radiation of an hour, MJ/m2/h; the clearness of the sky is given.</summary>
    public static double NetOfHourMJ(double celsius, double vapourKPa, double solarMJ, double clearShare) =>
        (1 - ReflectedShare) * solarMJ - DayStefanMJ / 24 * Fourth(celsius) * Sky(vapourKPa, clearShare);

    /// <summary>Clear-sky radiation (equation 37).</summary>
    public static double ClearSky(double extraterrestrialMJ, double altitudeM) => (0.75 + 2e-5 * altitudeM) * extraterrestrialMJ;

    private static double Sky(double vapourKPa, double clearShare) => (0.34 - 0.14 * Math.Sqrt(vapourKPa)) * (1.35 * clearShare - 0.35);

    private static double Fourth(double celsius) => Math.Pow(celsius + 273.16, 4);

    private static (double Phi, double Delta, double Sunset) Sun(double latitude, int dayOfYear)
    {
        var phi = latitude * Math.PI / 180;
        var delta = 0.409 * Math.Sin(2 * Math.PI * dayOfYear / 365 - 1.39);
        return (phi, delta, Math.Acos(-Math.Tan(phi) * Math.Tan(delta)));
    }
}
