using NodaTime;

namespace RackController.Growing;

/// <summary>
/// Arithmetic of the daily light integral (DLI): the photons between 400 and 700 nm that reach a square metre of canopy
/// in a day. It counts photons, not watts or lux, and knows nothing of how a crop uses them.
/// </summary>
public static class DailyLight
{
    private const double UmolPerMol = 1e6;

    /// <summary>Photons that reach the canopy in a time: PPFD x seconds / 1e6 (definition as in Torres and Lopez,
    /// Purdue Extension HO-238-W). Over one day this is the DLI.</summary>
    /// <param name="ppfdUmolPerM2S">Photosynthetic photon flux density while lit, umol/m2/s, from 0.</param>
    /// <param name="lit">How long it is lit, from 0.</param>
    /// <returns>mol/m2.</returns>
    public static double MolPerM2(double ppfdUmolPerM2S, Duration lit) => ppfdUmolPerM2S * lit.TotalSeconds / UmolPerMol;
}
