namespace RackController.Plant;

/// <summary>
/// How much water air and light can take, in the shape of the FAO-56 reference evapotranspiration: a radiation term and a term of
/// vapour pressure deficit with the air barely moving (0.5 m/s). The shares are assumptions of ours that a grower would fit by
/// weighing; a reference for grass outdoors is no measure of seedlings indoors.
/// </summary>
internal static class Evaporation
{
    // Photons of a white light-emitting diode per joule of its light, umol/J; common practice, no source.
    private const double PhotonsPerJoule = 4.6;

    // The weights of FAO-56 equation 6, as quoted by the library pyet, computed at 20 degrees Celsius and 0.5 m/s:
    // D / (D + g (1 + 0.34 u)) = 0.65 of the radiation, rounded down for what misses the leaves, and g 900 u / (T + 273) over the
    // same sum = 0.46 mm a day for each kPa.
    private const double ShareOfLightSpent = 0.6;
    private const double DeficitMPerSPerKPa = 5.3e-9;

    // Lid on, holes for pipes and cables; an assumption of ours.
    private const double OpenShareOfReservoir = 0.3;
    private const double WaterKgPerM3 = 1000;

    /// <summary>What a crop with water enough gives off, m3/s for each m2.</summary>
    /// <param name="ppfd">Photosynthetic photon flux density, umol/m2/s.</param>
    /// <param name="deficitKPa">Vapour pressure deficit of the air, kPa.</param>
    public static double OfCrop(double ppfd, double deficitKPa) =>
        ShareOfLightSpent * ppfd / PhotonsPerJoule / (Physics.EvaporationHeatJPerKg * WaterKgPerM3) + DeficitMPerSPerKPa * deficitKPa;

    /// <summary>What a covered reservoir loses through its openings, m3/s for each m2 of its surface.</summary>
    /// <param name="deficitKPa">Vapour pressure deficit over the water, kPa.</param>
    public static double OfReservoir(double deficitKPa) => OpenShareOfReservoir * DeficitMPerSPerKPa * deficitKPa;
}
