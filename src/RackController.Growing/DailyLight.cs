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

    /// <summary>How long it has to be lit for so many photons; more than a day where the lamp is too weak.</summary>
    /// <param name="ppfdUmolPerM2S">Photosynthetic photon flux density while lit, umol/m2/s, above 0.</param>
    /// <param name="molPerM2">mol/m2, from 0.</param>
    public static Duration LitFor(double ppfdUmolPerM2S, double molPerM2) =>
        Duration.FromSeconds(molPerM2 * UmolPerMol / ppfdUmolPerM2S);

    /// <summary>The flux that gives so many photons in a time.</summary>
    /// <param name="molPerM2">mol/m2, from 0.</param>
    /// <param name="lit">How long it is lit, above 0.</param>
    /// <returns>umol/m2/s.</returns>
    public static double PpfdUmolPerM2S(double molPerM2, Duration lit) => molPerM2 * UmolPerMol / lit.TotalSeconds;
}
