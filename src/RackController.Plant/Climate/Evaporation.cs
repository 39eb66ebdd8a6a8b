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
    private const double ShareOfLightSpent = 0.6;
    private const double MPerSPerKPa = 5.3e-9;
    private const double OpenShareOfReservoir = 0.3;
    private const double WaterKgPerM3 = 1000;

    /// <summary>What a crop with water enough gives off, m3/s for each m2.</summary>
    /// <param name="ppfd">Photosynthetic photon flux density, umol/m2/s.</param>
    /// <param name="deficitKPa">Vapour pressure deficit of the air, kPa.</param>
    public static double OfCrop(double ppfd, double deficitKPa) =>
        ShareOfLightSpent * ppfd / PhotonsPerJoule / (Physics.EvaporationHeatJPerKg * WaterKgPerM3) + MPerSPerKPa * deficitKPa;

    /// <summary>What a covered reservoir loses through its openings, m3/s for each m2 of its surface.</summary>
    /// <param name="deficitKPa">Vapour pressure deficit over the water, kPa.</param>
    public static double OfReservoir(double deficitKPa) => OpenShareOfReservoir * MPerSPerKPa * deficitKPa;
}
