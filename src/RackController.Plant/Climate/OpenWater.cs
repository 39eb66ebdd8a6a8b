namespace RackController.Plant;

/// <summary>Evaporation of a free water surface: Dalton's law with Penman's wind function, E = 6.43 (1 + 0.536 u) (es - e) / L, in
/// mm a day with L in MJ/kg (Penman 1948, as Shuttleworth has it in the Handbook of Hydrology 1993; from memory).</summary>
internal static class OpenWater
{
    private const double MJPerM2DayKPa = 6.43;
    private const double PerWind = 0.536;
    private const double SecondsPerDay = 86_400;
    private const double JoulesPerMJ = 1e6;

    /// <summary>What evaporates, kg/(m2 s); 0 where vapour would condense.</summary>
    /// <param name="saturationKPa">Saturation vapour pressure at the temperature of the surface, kPa.</param>
    /// <param name="vapourKPa">Vapour pressure of the air over it, kPa.</param>
    /// <param name="windMPerS">Speed of that air, m/s; 0 under a lid.</param>
    public static double EvaporationKgPerM2S(double saturationKPa, double vapourKPa, double windMPerS) =>
        MJPerM2DayKPa * JoulesPerMJ / SecondsPerDay / Physics.EvaporationHeatJPerKg
        * (1 + PerWind * windMPerS) * Math.Max(0, saturationKPa - vapourKPa);
}
