namespace RackController.Plant;

/// <summary>
/// What a crop under lamps gives off and how warm its leaves are: the hourly Penman-Monteith equation, reduced to indoors.
/// <list type="bullet">
/// <item>Net radiation is the energy of the photons that the canopy absorbs. A lamp's other heat leaves it as warm air, and
/// shelf, tray and leaf are at nearly one temperature, so long-wave exchange is left out of it.</item>
/// <item>Nothing warms the ground (G = 0): a tray is no soil, and its water keeps its temperature for hours.</item>
/// <item>Wind is the speed of the air that a fan moves, and without one 0.5 m/s, the least that FAO-56 recommends (from
/// memory), because still air rises from warm leaves all the same.</item>
/// <item>In the dark the leaves' own resistance is that of the night, as ASCE-EWRI 2005 has it (from memory).</item>
/// <item>A crop factor takes it from a full stand of grass to the crop: FAO-56 table 12 (from memory) has 0.7 for young small
/// vegetables and 1.05 for a full canopy. It has to be fitted by weighing.</item>
/// </list>
/// </summary>
internal static class Canopy
{
    /// <summary>Air speed at the canopy while a fan runs, m/s; common practice, no source.</summary>
    public const double FannedMPerS = 1.0;

    /// <summary>What stands for still air, m/s.</summary>
    public const double StillMPerS = 0.5;

    // Photons of a white light-emitting diode per joule of its light, umol/J, and the share of them that leaves absorb; common
    // practice, no source.
    private const double PhotonsPerJoule = 4.6;
    private const double AbsorbedShare = 0.85;

    private const double JoulesPerMJ = 1e6;

    // FAO-56, box 4 (from memory): the air's resistance over grass is 208 / u s/m.
    private const double ResistanceTimesWind = 208;
    private const double AirHeatJPerM3K = 1.2 * 1013;

    // 4 sigma T^3 at 20 degrees Celsius and an emissivity of 0.97: heat that leaves and shelf exchange by radiation.
    private const double RadiantWPerM2K = 5.54;

    private static readonly PenmanMonteith Lit = new(37 / 3600.0, 0.24);
    private static readonly PenmanMonteith Dark = new(37 / 3600.0, 0.96);

    /// <summary>Energy of light that the canopy absorbs, W/m2.</summary>
    /// <param name="ppfd">Photosynthetic photon flux density, umol/m2/s.</param>
    public static double AbsorbedWPerM2(double ppfd) => AbsorbedShare * ppfd / PhotonsPerJoule;

    /// <summary>What a full stand with water enough gives off, kg/(m2 s): 1 mm of water is 1 kg/m2.</summary>
    /// <param name="absorbedWPerM2">Energy of light absorbed, W/m2; 0 in the dark.</param>
    /// <param name="airC">Temperature of the air.</param>
    /// <param name="vapourKPa">Vapour pressure of the air, kPa.</param>
    /// <param name="windMPerS">Speed of the air, m/s.</param>
    /// <param name="psychrometricKPaPerK">Psychrometric constant, kPa/K.</param>
    public static double TranspirationKgPerM2S(
        double absorbedWPerM2, double airC, double vapourKPa, double windMPerS, double psychrometricKPaPerK)
    {
        var saturation = HumidAir.SaturationKPa(airC);
        var form = absorbedWPerM2 > 0 ? Lit : Dark;
        return form.WaterMm(
            absorbedWPerM2 / JoulesPerMJ, airC, HumidAir.SlopeKPaPerK(airC, saturation), Math.Max(0, saturation - vapourKPa), windMPerS,
            psychrometricKPaPerK);
    }

    /// <summary>Temperature of the leaves, degrees Celsius: what light brings and vapour does not take away leaves them as heat,
    /// to the air and by radiation, each in proportion to how much warmer than the air they are.</summary>
    /// <param name="absorbedWPerM2">Energy of light absorbed, W/m2.</param>
    /// <param name="transpiredKgPerM2S">What they give off, kg/(m2 s).</param>
    /// <param name="airC">Temperature of the air.</param>
    /// <param name="windMPerS">Speed of the air, m/s.</param>
    public static double LeafC(double absorbedWPerM2, double transpiredKgPerM2S, double airC, double windMPerS)
    {
        var excess = absorbedWPerM2 - Physics.EvaporationHeatJPerKg * transpiredKgPerM2S;
        return airC + excess / (AirHeatJPerM3K * windMPerS / ResistanceTimesWind + RadiantWPerM2K);
    }
}
